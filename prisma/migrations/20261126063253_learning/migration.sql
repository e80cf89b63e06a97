-- CreateTable
CREATE TABLE "StepMemory" (
    "eveningId" TEXT NOT NULL,
    "step" TEXT NOT NULL,
    "userId" TEXT,
    "closedAt" DATETIME NOT NULL,
    "date" TEXT NOT NULL,
    "dish" TEXT NOT NULL,
    "does" TEXT NOT NULL,
    "role" TEXT NOT NULL,
    "care" TEXT NOT NULL,
    "kit" TEXT NOT NULL,
    "kitchen" TEXT NOT NULL,
    "written" REAL NOT NULL,
    "took" REAL NOT NULL,
    "heatC" REAL,
    "byDoneness" BOOLEAN NOT NULL,

    PRIMARY KEY ("eveningId", "step"),
    CONSTRAINT "StepMemory_eveningId_fkey" FOREIGN KEY ("eveningId") REFERENCES "Evening" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "StepMemory_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "DishMemory" (
    "userId" TEXT NOT NULL,
    "eveningId" TEXT NOT NULL,
    "dish" TEXT NOT NULL,
    "verdict" TEXT,
    "left" TEXT,
    "note" TEXT NOT NULL DEFAULT '',

    PRIMARY KEY ("userId", "eveningId", "dish"),
    CONSTRAINT "DishMemory_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "DishMemory_eveningId_fkey" FOREIGN KEY ("eveningId") REFERENCES "Evening" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateIndex
CREATE INDEX "StepMemory_userId_idx" ON "StepMemory"("userId");

-- CreateIndex
CREATE INDEX "DishMemory_eveningId_idx" ON "DishMemory"("eveningId");

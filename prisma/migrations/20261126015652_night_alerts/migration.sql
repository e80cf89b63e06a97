-- CreateTable
CREATE TABLE "NightAlert" (
    "eveningId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "cooks" TEXT NOT NULL,
    "step" TEXT,
    "batch" INTEGER,
    "touch" TEXT,
    "course" TEXT,
    "due" DATETIME NOT NULL,
    "firedAt" DATETIME NOT NULL,

    PRIMARY KEY ("eveningId", "id"),
    CONSTRAINT "NightAlert_eveningId_fkey" FOREIGN KEY ("eveningId") REFERENCES "Evening" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

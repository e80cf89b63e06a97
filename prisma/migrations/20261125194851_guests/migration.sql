-- AlterTable
ALTER TABLE "Evening" ADD COLUMN "fileId" TEXT;

-- CreateTable
CREATE TABLE "Guest" (
    "eveningId" TEXT NOT NULL,
    "id" TEXT NOT NULL,
    "place" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "reply" TEXT NOT NULL,
    "child" BOOLEAN NOT NULL,
    "portion" REAL NOT NULL,
    "arrives" TEXT,
    "needs" TEXT,
    "drinks" TEXT NOT NULL,
    "drives" BOOLEAN NOT NULL,
    "words" TEXT NOT NULL,

    PRIMARY KEY ("eveningId", "id"),
    CONSTRAINT "Guest_eveningId_fkey" FOREIGN KEY ("eveningId") REFERENCES "Evening" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

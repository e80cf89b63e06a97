-- AlterTable
ALTER TABLE "Evening" ADD COLUMN "erasedAt" DATETIME;

-- CreateTable
CREATE TABLE "PlanChange" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "eveningId" TEXT NOT NULL,
    "memberId" TEXT,
    "root" TEXT NOT NULL,
    "entry" TEXT NOT NULL,
    "field" TEXT NOT NULL,
    "span" INTEGER NOT NULL,
    "times" INTEGER NOT NULL,
    "at" DATETIME NOT NULL,
    CONSTRAINT "PlanChange_eveningId_fkey" FOREIGN KEY ("eveningId") REFERENCES "Evening" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "PlanChange_memberId_fkey" FOREIGN KEY ("memberId") REFERENCES "Member" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Notice" (
    "memberId" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "by" TEXT NOT NULL,
    "toldAt" DATETIME NOT NULL,

    PRIMARY KEY ("memberId", "kind", "by"),
    CONSTRAINT "Notice_memberId_fkey" FOREIGN KEY ("memberId") REFERENCES "Member" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_Replies" (
    "eveningId" TEXT NOT NULL PRIMARY KEY,
    "closedAt" DATETIME,
    "answerBy" TEXT,
    "sharesMenu" BOOLEAN NOT NULL DEFAULT false,
    "place" TEXT NOT NULL DEFAULT '',
    "keepDays" INTEGER NOT NULL DEFAULT 30,
    CONSTRAINT "Replies_eveningId_fkey" FOREIGN KEY ("eveningId") REFERENCES "Evening" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);
INSERT INTO "new_Replies" ("answerBy", "closedAt", "eveningId", "place", "sharesMenu") SELECT "answerBy", "closedAt", "eveningId", "place", "sharesMenu" FROM "Replies";
DROP TABLE "Replies";
ALTER TABLE "new_Replies" RENAME TO "Replies";
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;

-- CreateIndex
CREATE UNIQUE INDEX "PlanChange_eveningId_span_memberId_root_entry_field_key" ON "PlanChange"("eveningId", "span", "memberId", "root", "entry", "field");

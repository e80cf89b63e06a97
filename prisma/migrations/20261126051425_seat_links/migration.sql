-- CreateTable
CREATE TABLE "SeatLink" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "eveningId" TEXT NOT NULL,
    "label" TEXT NOT NULL,
    "cook" TEXT,
    "tokenHash" TEXT NOT NULL,
    "memberId" TEXT,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    CONSTRAINT "SeatLink_eveningId_fkey" FOREIGN KEY ("eveningId") REFERENCES "Evening" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "SeatLink_memberId_fkey" FOREIGN KEY ("memberId") REFERENCES "Member" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_User" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "email" TEXT,
    "name" TEXT NOT NULL,
    "passwordHash" TEXT,
    "sessionVersion" INTEGER NOT NULL DEFAULT 1,
    "demo" BOOLEAN NOT NULL DEFAULT false,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP
);
INSERT INTO "new_User" ("createdAt", "demo", "email", "id", "name", "passwordHash", "sessionVersion") SELECT "createdAt", "demo", "email", "id", "name", "passwordHash", "sessionVersion" FROM "User";
DROP TABLE "User";
ALTER TABLE "new_User" RENAME TO "User";
CREATE UNIQUE INDEX "User_email_key" ON "User"("email");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;

-- CreateIndex
CREATE UNIQUE INDEX "SeatLink_tokenHash_key" ON "SeatLink"("tokenHash");

-- CreateIndex
CREATE UNIQUE INDEX "SeatLink_memberId_key" ON "SeatLink"("memberId");

-- CreateIndex
CREATE INDEX "SeatLink_eveningId_idx" ON "SeatLink"("eveningId");

-- CreateTable
CREATE TABLE "Replies" (
    "eveningId" TEXT NOT NULL PRIMARY KEY,
    "closedAt" DATETIME,
    "answerBy" TEXT,
    "sharesMenu" BOOLEAN NOT NULL DEFAULT false,
    "place" TEXT NOT NULL DEFAULT '',
    CONSTRAINT "Replies_eveningId_fkey" FOREIGN KEY ("eveningId") REFERENCES "Evening" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Invitation" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "eveningId" TEXT NOT NULL,
    "label" TEXT NOT NULL,
    "places" INTEGER NOT NULL,
    "tokenHash" TEXT,
    "email" TEXT,
    "revision" INTEGER NOT NULL DEFAULT 0,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "answeredAt" DATETIME,
    "consentAt" DATETIME,
    "revokedAt" DATETIME,
    "erasedAt" DATETIME,
    CONSTRAINT "Invitation_eveningId_fkey" FOREIGN KEY ("eveningId") REFERENCES "Evening" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "GuestWords" (
    "eveningId" TEXT NOT NULL,
    "guestId" TEXT NOT NULL,
    "words" TEXT NOT NULL,

    PRIMARY KEY ("eveningId", "guestId"),
    CONSTRAINT "GuestWords_eveningId_guestId_fkey" FOREIGN KEY ("eveningId", "guestId") REFERENCES "Guest" ("eveningId", "id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- The foreign keys of GuestWords hold for the table that takes the place of Guest.
-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_Guest" (
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
    "invitationId" TEXT,
    "changedAt" DATETIME,
    "byGuest" BOOLEAN NOT NULL DEFAULT false,

    PRIMARY KEY ("eveningId", "id"),
    CONSTRAINT "Guest_eveningId_fkey" FOREIGN KEY ("eveningId") REFERENCES "Evening" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "Guest_invitationId_fkey" FOREIGN KEY ("invitationId") REFERENCES "Invitation" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);
INSERT INTO "new_Guest" ("arrives", "child", "drinks", "drives", "eveningId", "id", "name", "needs", "place", "portion", "reply") SELECT "arrives", "child", "drinks", "drives", "eveningId", "id", "name", "needs", "place", "portion", "reply" FROM "Guest";
INSERT INTO "GuestWords" ("eveningId", "guestId", "words") SELECT "eveningId", "id", "words" FROM "Guest" WHERE "words" <> '';
DROP TABLE "Guest";
ALTER TABLE "new_Guest" RENAME TO "Guest";
CREATE INDEX "Guest_invitationId_idx" ON "Guest"("invitationId");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;

-- CreateIndex
CREATE UNIQUE INDEX "Invitation_tokenHash_key" ON "Invitation"("tokenHash");

-- CreateIndex
CREATE INDEX "Invitation_eveningId_idx" ON "Invitation"("eveningId");

-- CreateTable
CREATE TABLE "CalendarFeed" (
    "memberId" TEXT NOT NULL PRIMARY KEY,
    "tokenHash" TEXT,
    "alarm" INTEGER,
    "madeAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "revokedAt" DATETIME,
    CONSTRAINT "CalendarFeed_memberId_fkey" FOREIGN KEY ("memberId") REFERENCES "Member" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "CalendarEntry" (
    "memberId" TEXT NOT NULL,
    "uid" TEXT NOT NULL,
    "digest" TEXT NOT NULL,
    "sequence" INTEGER NOT NULL,
    "changedAt" DATETIME NOT NULL,
    "startsAt" DATETIME NOT NULL,
    "goneAt" DATETIME,

    PRIMARY KEY ("memberId", "uid"),
    CONSTRAINT "CalendarEntry_memberId_fkey" FOREIGN KEY ("memberId") REFERENCES "Member" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateIndex
CREATE UNIQUE INDEX "CalendarFeed_tokenHash_key" ON "CalendarFeed"("tokenHash");

import type Database from 'libsql'

/**
 * Closes in a restored database what was closed since it was backed up, as the one of before tells: sessions that were ended
 * and passwords that were changed, seats that were taken away, links that were replaced or withdrawn, guests that were erased, devices
 * that are called no more and letters that somebody wants no more.
 * Evenings and accounts that are no longer there come back: that is what a backup is for.
 */
export const keepClosed = (db: Database.Database, before: string): void => {
  db.prepare('ATTACH ? AS before').run([before])
  const [tables, earlier] = ['main', 'before'].map((schema) => columnsOf(db, schema)) as [Columns, Columns]
  const both = (table: string, ...columns: readonly string[]): boolean =>
    [tables, earlier].every((known) => columns.every((column) => known.get(table)?.has(column)))
  db.exec('BEGIN')
  if (both('User', 'sessionVersion'))
    db.exec(`UPDATE main.User SET (sessionVersion, passwordHash) =
      (SELECT sessionVersion, passwordHash FROM before.User AS b WHERE b.id = main.User.id)
      WHERE id IN (SELECT id FROM before.User)`)
  // Somebody who came by a link and has an account now: the link is closed, and a password without an address opens nothing.
  if (both('User', 'email'))
    db.exec(`UPDATE main.User SET email = (SELECT email FROM before.User AS b WHERE b.id = main.User.id)
      WHERE email IS NULL AND id IN (SELECT id FROM before.User AS b WHERE NOT EXISTS
        (SELECT 1 FROM main.User AS other WHERE other.email = b.email))`)
  for (const [table, columns] of CHOSEN)
    if (both(table, ...columns))
      db.exec(`DELETE FROM main."${table}" WHERE memberId IN (SELECT id FROM before.Member) AND NOT EXISTS
        (SELECT 1 FROM before."${table}" AS b WHERE ${columns.map((column) => `b."${column}" = main."${table}"."${column}"`).join(' AND ')})`)
  for (const table of tables.keys()) {
    if (both(table, 'id', 'revokedAt'))
      db.exec(`UPDATE main."${table}" SET revokedAt = (SELECT revokedAt FROM before."${table}" AS b WHERE b.id = main."${table}".id)
        WHERE id IN (SELECT id FROM before."${table}" WHERE revokedAt IS NOT NULL)`)
    // A link that opens nothing now opens nothing afterwards: only its hash could open it.
    if (table !== 'Invitation' && both(table, 'tokenHash'))
      db.exec(
        `DELETE FROM main."${table}" WHERE tokenHash NOT IN (SELECT tokenHash FROM before."${table}" WHERE tokenHash IS NOT NULL)`,
      )
  }
  if (both('Invitation', 'tokenHash')) closeInvitations(db)
  if (both('Guest', 'id'))
    db.exec(`DELETE FROM main.Guest WHERE eveningId IN (SELECT id FROM before.Evening)
      AND NOT EXISTS (SELECT 1 FROM before.Guest AS b WHERE b.eveningId = main.Guest.eveningId AND b.id = main.Guest.id)`)
  db.exec('COMMIT')
  db.exec('DETACH before')
}

/** What somebody has asked for and may have taken back, with what tells one from another. */
const CHOSEN = [
  ['Notice', ['memberId', 'kind', 'by']],
  ['PushDevice', ['memberId', 'endpoint']],
] as const

const closeInvitations = (db: Database.Database): void => {
  db.exec(`
    UPDATE main.Invitation SET tokenHash = NULL, revokedAt = coalesce(revokedAt, CURRENT_TIMESTAMP)
      WHERE eveningId IN (SELECT id FROM before.Evening)
      AND tokenHash NOT IN (SELECT tokenHash FROM before.Invitation WHERE tokenHash IS NOT NULL);
    UPDATE main.Invitation SET label = '', email = NULL, tokenHash = NULL, consentAt = NULL, answeredAt = NULL,
      erasedAt = (SELECT erasedAt FROM before.Invitation AS b WHERE b.id = main.Invitation.id)
      WHERE id IN (SELECT id FROM before.Invitation WHERE erasedAt IS NOT NULL);`)
}

type Columns = ReadonlyMap<string, ReadonlySet<string>>

const columnsOf = (db: Database.Database, schema: string): Columns => {
  const names = db.prepare(`SELECT name FROM ${schema}.sqlite_schema WHERE type = 'table'`).all([]) as { name: string }[]
  return new Map(
    names.map(({ name }) => {
      const columns = db.prepare(`SELECT name FROM pragma_table_info(?, ?)`).all([name, schema]) as { name: string }[]
      return [name, new Set(columns.map((column) => column.name))]
    }),
  )
}

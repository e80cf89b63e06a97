import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { pathToFileURL } from 'node:url'
import { PrismaLibSql } from '@prisma/adapter-libsql'
import { bindMigrationAwareSqlAdapterFactory } from '@prisma/driver-adapter-utils'

type Bindings = typeof import('@prisma/schema-engine-wasm/schema_engine_bg')
type SchemaEngine = Bindings['SchemaEngine']['prototype']
type Migrations = Parameters<SchemaEngine['applyMigrations']>[0]['migrationsList']

/** Nothing in the database stands outside the schema. */
const filters = { externalTables: [], externalEnums: [] }
const LOCKFILE = 'migration_lock.toml'

export interface Engine {
  /** Applies what is not yet applied; returns the names. */
  apply(migrations: Migrations): Promise<readonly string[]>
  /** The SQL that leads from the database as it is to the schema; null when they agree. */
  diff(): Promise<string | null>
  free(): void
}

let loaded: Promise<Bindings> | null = null

/** Once a process: the bindings keep the module they are given, and a second one would break the engines of the first. */
const load = async (): Promise<Bindings> => {
  const bindings: Bindings = await import('@prisma/schema-engine-wasm/schema_engine_bg')
  const wasmFile = createRequire(import.meta.url)
    .resolve('@prisma/schema-engine-wasm/schema_engine_bg')
    .replace(/\.js$/, '.wasm')
  const module = new WebAssembly.Module(readFileSync(wasmFile))
  const { exports } = new WebAssembly.Instance(module, { './schema_engine_bg.js': { ...bindings } })
  bindings.__wbg_set_wasm(exports)
  ;(exports.__wbindgen_start as () => void)()
  return bindings
}

/** Prisma's own migration engine, as WebAssembly, on one SQLite file. */
export const openEngine = async (schemaFile: string, databaseFile: string): Promise<Engine> => {
  loaded ??= load()
  const bindings = await loaded
  const schema = { path: schemaFile, content: readFileSync(schemaFile, 'utf8') }
  const adapter = bindMigrationAwareSqlAdapterFactory(new PrismaLibSql({ url: pathToFileURL(databaseFile).href, timeout: 5000 }))
  const engine = await bindings.SchemaEngine.new({ datamodels: [[schema.path, schema.content]] }, () => undefined, adapter)
  return {
    apply: async (migrationsList) => (await engine.applyMigrations({ migrationsList, filters })).appliedMigrationNames,
    diff: async () => {
      const found = await engine.diff({
        from: { tag: 'schemaDatasource', files: [schema], configDir: '' },
        to: { tag: 'schemaDatamodel', files: [schema] },
        script: true,
        exitCode: true,
        filters,
      })
      return found.exitCode === 2 ? found.stdout : null
    },
    free: () => engine.free(),
  }
}

/** The migrations of a folder, oldest first, as the engine wants them. */
export const readMigrations = (folder: string): Migrations => ({
  baseDir: folder,
  shadowDbInitScript: '',
  lockfile: { path: LOCKFILE, content: readFileSync(`${folder}/${LOCKFILE}`, 'utf8') },
  migrationDirectories: migrationNames(folder).map((path) => ({
    path,
    migrationFile: {
      path: 'migration.sql',
      content: { tag: 'ok', value: readFileSync(`${folder}/${path}/migration.sql`, 'utf8') },
    },
  })),
})

export const migrationNames = (folder: string): readonly string[] =>
  readdirSync(folder)
    .filter((name) => existsSync(`${folder}/${name}/migration.sql`))
    .sort()

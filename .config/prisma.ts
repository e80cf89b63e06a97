import { defineConfig } from 'prisma/config'

// The address of the database is given to the client at run time (server/env.ts); generate, validate and format need none.
export default defineConfig({ schema: '../prisma/schema.prisma' })

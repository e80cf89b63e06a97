// As npm run restore:  FILE
import '#server/cli/restore.ts'

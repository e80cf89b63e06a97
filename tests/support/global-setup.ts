import { make } from '#server/cli/make.ts'
import { startServer } from './start-server.ts'

/** For all browser tests: the built server on a data folder of its own. Tests find it in the environment. */
const setUp = async (): Promise<() => Promise<void>> => {
  if ((await make(console.log)) !== 0) throw new Error('the build failed')
  const server = await startServer({ kind: 'built' })
  process.env.TABLEWARD_ADDRESS = server.address
  process.env.TABLEWARD_DATA = server.dataFolder
  process.env.TABLEWARD_DEMO = JSON.stringify(server.demo)
  return async () => {
    const code = await server.kill()
    await server.remove()
    if (code !== 0) throw new Error(`the server stopped with ${code}:\n${server.output()}`)
  }
}

export default setUp

import type { IncomingMessage, ServerResponse } from 'node:http'
import { gzipSync } from 'node:zlib'

const EVENING_SCREEN = /^\/evenings\/(?!new\b)[^/?]+\/[^?]/
const SCRIPT = /<script src="([^"<>]+)"(?=[^>]* async="")[^>]*><\/script>/g
const AHEAD = /<link rel="preload"(?=[^>]* as="script")[^>]* href="([^"<>]+)"[^>]*\/>/g
const END = '</body></html>'

/** A page in the background is not painted; nor must one stay without its scripts that does not say when it is. */
const START = `((scripts,ahead)=>{
const all=[...scripts.map(src=>['script',{src,async:true}]),...ahead.map(href=>['link',{rel:'preload',as:'script',fetchPriority:'low',href}])]
const next=()=>{for(const [tag,of] of all.splice(0,2))document.head.append(Object.assign(document.createElement(tag),of));if(all.length)setTimeout(next)}
let begun=false
const begin=()=>{if(!begun){begun=true;setTimeout(next)}}
if(document.hidden)begin();else{new PerformanceObserver(begin).observe({type:'paint',buffered:true});setTimeout(begin,2000)}})`

/**
 * The page with its scripts taken out, and named at its end as what is fetched after the first paint: what can be read comes before what
 * makes it live. `html` as React writes it: a script that may come at any time is `async=""`.
 */
export const scriptsAfterPaint = (html: string, nonce: string): string => {
  const scripts = new Set<string>()
  const ahead = new Set<string>()
  const taken = html
    .replace(AHEAD, (_tag, href: string) => {
      ahead.add(href)
      return ''
    })
    .replace(SCRIPT, (_tag, src: string) => {
      scripts.add(src)
      return ''
    })
  if (!taken.endsWith(END)) return html
  const lists = [[...scripts], [...ahead].filter((href) => !scripts.has(href))].map((list) => JSON.stringify(list)).join()
  return `${taken.slice(0, -END.length)}<script nonce="${nonce}">${START}(${lists})</script>${END}`
}

/** Whether what is asked for is a screen of an evening as a whole page, not a part of one for the app's own way there. */
const isPage = (request: IncomingMessage): boolean =>
  request.method === 'GET' && EVENING_SCREEN.test(request.url ?? '') && request.headers.rsc === undefined

/** Has an evening's page be painted before its scripts are fetched. What is not such a page goes as it came. */
export const paintFirst = (request: IncomingMessage, response: ServerResponse): void => {
  if (!isPage(request)) return
  const nonce = String(request.headers['x-nonce'])
  const takesGzip = /\bgzip\b/.test(String(request.headers['accept-encoding'] ?? ''))
  // Next is to give it as it is.
  delete request.headers['accept-encoding']
  const { write, end, writeHead } = response
  const pieces: Buffer[] = []
  let isHtml = false

  const keep = (piece: unknown, encoding: unknown) => {
    if (typeof piece === 'string')
      pieces.push(Buffer.from(piece, typeof encoding === 'string' ? (encoding as BufferEncoding) : 'utf8'))
    else if (piece instanceof Uint8Array) pieces.push(Buffer.from(piece))
  }
  response.writeHead = ((...head: Parameters<typeof writeHead>) => {
    isHtml = String(response.getHeader('content-type')).startsWith('text/html')
    if (isHtml) {
      response.removeHeader('content-length')
      if (takesGzip) response.setHeader('content-encoding', 'gzip')
    }
    return writeHead.apply(response, head)
  }) as typeof writeHead
  response.write = ((piece: unknown, ...rest: unknown[]) => {
    if (!response.headersSent) response.writeHead(response.statusCode)
    if (!isHtml) return (write as (...given: unknown[]) => boolean).call(response, piece, ...rest)
    keep(piece, rest[0])
    for (const told of rest) if (typeof told === 'function') process.nextTick(told)
    return true
  }) as typeof write
  response.end = ((...given: unknown[]) => {
    if (!response.headersSent) response.writeHead(response.statusCode)
    if (!isHtml) return (end as (...given: unknown[]) => ServerResponse).apply(response, given)
    keep(given[0], given[1])
    const page = Buffer.from(scriptsAfterPaint(Buffer.concat(pieces).toString(), nonce))
    response.write = write
    response.end = end
    return response.end(takesGzip ? gzipSync(page) : page)
  }) as typeof end
}

import { IncomingMessage } from 'node:http'
import { Socket } from 'node:net'
import { expect, test } from 'vitest'
import { isOwnOrigin } from '#server/auth/origins.ts'
import { parseEnv, type Settings } from '#server/env.ts'
import { setForwarded } from '#server/web/forwarded.ts'

const settings = (variables: Record<string, string>): Settings => {
  const parsed = parseEnv(variables)
  if (!parsed.ok) throw new Error(parsed.error.join())
  return parsed.value
}

const request = (headers: Record<string, string>, url = '/'): IncomingMessage =>
  Object.assign(new IncomingMessage(new Socket()), { headers, url })

const isOwn = (variables: Record<string, string>, headers: Record<string, string>): boolean => {
  const asked = request(headers)
  setForwarded(asked, settings(variables))
  return isOwnOrigin(asked, settings(variables))
}

test('A10 own is the address that was asked for, the public one and the listed ones', () => {
  const lan = { host: '192.0.2.7:3000' }
  expect(isOwn({}, { ...lan, origin: 'http://192.0.2.7:3000' })).toBe(true)
  expect(isOwn({}, { ...lan, origin: 'http://192.0.2.7' })).toBe(false)
  expect(isOwn({}, { ...lan, origin: 'https://192.0.2.7:3000' })).toBe(false)
  const behind = { NEXTAUTH_URL: 'https://dinner.example.org', ORIGINS: 'https://a.example, https://b.example' }
  for (const origin of ['https://dinner.example.org', 'https://a.example', 'https://b.example'])
    expect(isOwn(behind, { ...lan, origin })).toBe(true)
  expect(isOwn(behind, { ...lan, origin: 'https://c.example' })).toBe(false)
})

test('A10 a request without an origin is own unless the browser says it comes from another site', () => {
  expect(isOwn({}, { host: 'localhost:3000' })).toBe(true)
  expect(isOwn({}, { host: 'localhost:3000', 'sec-fetch-site': 'cross-site' })).toBe(false)
  expect(isOwn({}, { host: 'localhost:3000', 'sec-fetch-site': 'same-origin' })).toBe(true)
})

test('A10 a proxy is believed only when we are told to, and then its own word, not what it passed on', () => {
  const said = {
    host: 'inner:3000',
    'x-forwarded-proto': 'http, https',
    'x-forwarded-host': 'evil.example, dinner.example.org',
    'x-forwarded-for': '198.51.100.1, 192.0.2.9',
  }
  const trusting = request({ ...said })
  setForwarded(trusting, settings({ TRUST_PROXY: '1' }))
  expect(trusting.headers).toMatchObject({
    'x-forwarded-proto': 'https',
    'x-forwarded-host': 'dinner.example.org',
    'x-forwarded-for': '192.0.2.9',
  })
  const not = request({ ...said })
  setForwarded(not, settings({}))
  expect(not.headers).toMatchObject({ 'x-forwarded-proto': 'http', 'x-forwarded-host': 'inner:3000' })
  expect(not.headers['x-forwarded-for']).not.toContain('.1,')
})

test('A12 the page to come back to is without the marks of Next', () => {
  const asked = request({ host: 'localhost:3000', 'x-path': '/forged' }, '/evenings/x?view=list&_rsc=abc')
  setForwarded(asked, settings({}))
  expect(asked.headers['x-path']).toBe('/evenings/x?view=list')
})

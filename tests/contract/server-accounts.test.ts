import { afterAll, beforeAll, expect, test } from 'vitest'
import { changePassword, signIn, signUp } from '#server/auth/accounts.ts'
import { openLimits } from '#server/auth/limits.ts'
import { isSecure } from '#server/auth/request.ts'
import { cookieName, secret, userOfCookies } from '#server/auth/session.ts'
import { type Live, setLive } from '#server/live.ts'
import { openLiveParts, somebody } from '#tests/support/live-parts.ts'
import { sessionCookie } from '#tests/support/session-cookie.ts'

let parts: Live & { readonly close: () => Promise<void> }
beforeAll(async () => {
  parts = await openLiveParts()
})
afterAll(() => parts.close())

const right = 'a password for tests'

test('A13 a wrong password and an unknown e-mail address get the same answer', async () => {
  const user = await somebody('Noor')
  const wrong = { ok: false, error: { kind: 'wrong' } }
  expect(await signIn({ email: user.email, password: 'not the password' }, '192.0.2.1')).toEqual(wrong)
  expect(await signIn({ email: 'nobody@test.example', password: right }, '192.0.2.1')).toEqual(wrong)
  expect(await signIn({ email: '', password: '' }, '192.0.2.1')).toEqual(wrong)
  expect(await signIn({ email: { $ne: '' }, password: right }, '192.0.2.1')).toEqual(wrong)
  expect(await signIn({ email: ` ${user.email.toUpperCase()} `, password: right }, '192.0.2.1')).toMatchObject({
    ok: true,
    value: { id: user.id, sessionVersion: 1 },
  })
})

test('A13 after ten wrong tries an address waits; another one, another account and good tries do not', async () => {
  setLive({ ...parts, limits: openLimits() })
  const user = await somebody('Noor')
  for (let good = 0; good < 12; good += 1)
    expect((await signIn({ email: user.email, password: right }, '192.0.2.2')).ok).toBe(true)
  for (let bad = 0; bad < 10; bad += 1)
    expect(await signIn({ email: user.email, password: 'wrong' }, '192.0.2.2')).toMatchObject({ error: { kind: 'wrong' } })
  const refused = await signIn({ email: user.email, password: right }, '192.0.2.2')
  if (refused.ok || refused.error.kind !== 'too-many-tries') throw new Error('was let try on')
  expect(refused.error.seconds).toBeGreaterThan(600)
  expect(refused.error.seconds).toBeLessThanOrEqual(900)
  expect((await signIn({ email: user.email, password: right }, '192.0.2.3')).ok).toBe(true)
  const other = await somebody('Other')
  expect((await signIn({ email: other.email, password: right }, '192.0.2.2')).ok).toBe(true)
  setLive(parts)
})

test('A14 an account needs an e-mail address nobody has, a name and ten characters of password', async () => {
  const asked = { email: 'Ama@Test.example', name: ' Ama ', password: 'ten chars!' }
  const made = await signUp(asked, '192.0.2.4')
  if (!made.ok) throw new Error(made.error.kind)
  const user = await parts.db.user.findUniqueOrThrow({ where: { id: made.value.userId } })
  expect(user).toMatchObject({ email: 'ama@test.example', name: 'Ama', demo: false, sessionVersion: 1 })
  expect(user.passwordHash).toMatch(/^\$argon2id\$/)
  expect((await signIn({ email: asked.email, password: asked.password }, '192.0.2.4')).ok).toBe(true)
  expect(await signUp(asked, '192.0.2.4')).toEqual({ ok: false, error: { kind: 'email-taken' } })
  const bad = await signUp({ email: 'x', name: '', password: 'nine char', admin: true }, '192.0.2.4')
  if (bad.ok || bad.error.kind !== 'invalid') throw new Error('was taken')
  expect(bad.error.refusals.map(({ path }) => path).sort()).toEqual(['admin', 'email', 'name', 'password'])
})

test('A14 a password changes only for who knows the one before', async () => {
  const user = await somebody('Noor')
  expect(await changePassword(user.id, { current: 'guess', next: 'a new password' })).toEqual({
    ok: false,
    error: { kind: 'wrong-password' },
  })
  expect(await changePassword(user.id, { current: right, next: 'short' })).toMatchObject({ error: { kind: 'invalid' } })
  expect((await changePassword(user.id, { current: right, next: 'a new password' })).ok).toBe(true)
  expect((await signIn({ email: user.email, password: right }, '192.0.2.5')).ok).toBe(false)
  expect(await signIn({ email: user.email, password: 'a new password' }, '192.0.2.5')).toMatchObject({
    value: { sessionVersion: 2 },
  })
})

test('A12 a cookie is somebody only with this secret, in this session version and under its own name', async () => {
  const user = await somebody('Noor')
  const cookies = async (key: string, version = 1, name = cookieName(false)) => {
    const value = (await sessionCookie(key, user.id, version)).split('=')[1] ?? ''
    return { [name]: value }
  }
  expect(await userOfCookies(await cookies(secret()), false)).toEqual({ id: user.id, email: user.email, name: user.name })
  expect(await userOfCookies(await cookies('x'.repeat(43)), false)).toBeNull()
  expect(await userOfCookies(await cookies(secret(), 2), false)).toBeNull()
  // Behind TLS the cookie of plain http does not count: somebody on the network could have set it.
  expect(await userOfCookies(await cookies(secret()), true)).toBeNull()
  expect(await userOfCookies(await cookies(secret(), 1, '__Secure-tableward.session'), true)).toMatchObject({ id: user.id })
  expect(await userOfCookies({}, false)).toBeNull()
  expect(isSecure(new Headers({ 'x-forwarded-proto': 'https' }))).toBe(true)
})

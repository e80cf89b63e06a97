import { expect, type Page, test } from '@playwright/test'
import { demoEveningId, inviteHousehold } from './household.ts'
import { demoPage, ready } from './people.ts'

/** All that a page keeps on its device, as text. */
const keptOnDevice = (page: Page): Promise<string> =>
  page.evaluate(async () => {
    const read = <T>(request: IDBRequest<T>) =>
      new Promise<T>((resolve, reject) => {
        request.onsuccess = () => resolve(request.result)
        request.onerror = () => reject(request.error)
      })
    const text = new TextDecoder('latin1')
    const kept: string[] = [JSON.stringify({ ...localStorage }), JSON.stringify({ ...sessionStorage }), document.cookie]
    for (const { name } of await indexedDB.databases()) {
      const db = await read(indexedDB.open(name ?? ''))
      for (const store of db.objectStoreNames)
        for (const value of await read(db.transaction(store).objectStore(store).getAll()))
          kept.push(value instanceof Uint8Array ? text.decode(value) : JSON.stringify(value))
      db.close()
    }
    for (const cache of await caches.keys()) for (const { url } of await (await caches.open(cache)).keys()) kept.push(url)
    return kept.join('\n')
  })

test('I12 I14 a guest answers on a phone without scripts in a few taps; the host sees it; erased, it is nowhere on their device', async ({
  browser,
}, info) => {
  // biome-ignore lint/suspicious/noSkippedTests: one width is enough for it
  test.skip(info.project.name !== 'phone', 'guests answer on a phone')
  const word = 'Holunderblüte'
  const host = await demoPage(browser)
  const eveningId = demoEveningId()
  const path = await inviteHousehold(host, eveningId, word, 2)

  const phone = await browser.newContext({ javaScriptEnabled: false, viewport: { width: 390, height: 844 }, hasTouch: true })
  const guest = await phone.newPage()
  await guest.goto(path)
  await expect(guest.getByRole('heading', { level: 1 })).toHaveText('Eight at the long table')
  await expect(guest.getByLabel('You: what is eaten')).toBeHidden()
  // Seven touches: as many as a thumb makes in less than a minute.
  await guest.getByLabel('You: coming or not').selectOption({ label: 'I’ll be there' })
  await guest.getByLabel('You: what is eaten').selectOption({ label: 'everything but' })
  await guest.getByLabel('You: what not').first().selectOption({ label: 'sesame' })
  await guest.getByLabel('You: alcohol').selectOption({ label: 'no alcohol' })
  await guest.getByRole('button', { name: 'Send my answer' }).tap()
  await expect(guest.getByRole('alert')).toContainText('how serious it is')
  await expect(guest.getByLabel('You: what not').first()).toHaveValue('sesame')
  await guest.getByLabel('You: how serious').first().selectOption({ label: 'a severe allergy' })
  await expect(guest.getByText('Because it is severe').first()).toBeVisible()
  await guest.getByLabel(/They may keep/).check()
  await guest.getByRole('button', { name: 'Send my answer' }).tap()
  await expect(guest.getByRole('status')).toContainText(`${word}: comes; severe sesame allergy`)

  await host.goto(`/evenings/${eveningId}/guests`)
  await ready(host)
  await expect(host.getByText(word).first()).toBeVisible()
  const kept = await keptOnDevice(host)
  expect(kept, 'the search sees the plan’s copy').toContain('tableward/')
  expect(kept).not.toContain(word)

  await guest.getByText('What is stored, and how to erase it').tap()
  await guest.getByLabel('Yes, all of it, for good.').check()
  await guest.getByRole('button', { name: 'Erase all of it' }).tap()
  await expect(guest.getByRole('heading', { level: 1 })).toHaveText('It is erased')
  expect((await guest.goto(path))?.status()).toBe(404)
  // A page that was open says that somebody has gone, and knows it no more when it is opened anew.
  await expect(host.getByText(`${word} is off the list.`)).toBeVisible()
  await expect(host.getByText(word)).toHaveCount(1)
  await host.reload()
  await ready(host)
  await expect(host.getByText(word)).toHaveCount(0)
  expect(await keptOnDevice(host)).not.toContain(word)
  await phone.close()
})

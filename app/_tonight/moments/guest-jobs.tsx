'use client'

import { useMemo } from 'react'
import { useNight } from '#app/_tonight/use-night.ts'
import { jobText } from '#app/_words/night-moment.ts'
import { jobsOf } from '#lib/night/jobs.ts'
import css from './moments.module.css'

const MOST = 4

/** What a guest could do just now, in a line that can be said across the table: no knives, no heat. */
export function GuestJobs() {
  const { evening, order, nowMs, names } = useNight()
  const jobs = useMemo(() => (order ? jobsOf(evening, order, nowMs) : []), [evening, order, nowMs])
  if (jobs.length === 0) return null
  return (
    <section className={css.ask} aria-labelledby="ask-a-guest">
      <h3 id="ask-a-guest">Ask a guest</h3>
      <ul className={css.rows}>
        {jobs.slice(0, MOST).map((job) => (
          <li key={jobText(job, names, evening.zone)}>{jobText(job, names, evening.zone)}</li>
        ))}
      </ul>
    </section>
  )
}

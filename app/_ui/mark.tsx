/** Our mark: a plate with its hem, and the flame. */
export function Mark() {
  return (
    <svg width="30" height="30" viewBox="0 0 30 30" aria-hidden="true">
      <circle cx="14" cy="17" r="11" fill="none" stroke="currentColor" strokeWidth="1.8" />
      <circle cx="14" cy="17" r="6.4" fill="none" stroke="currentColor" strokeWidth="1.4" strokeDasharray="3 2.2" />
      <path d="M25.4 1c2.3 3.7 3.2 6 3.2 8.6a3.6 4 0 0 1-7.2 0c0-2.8 2.2-4.6 4-8.6z" fill="#f0a422" />
    </svg>
  )
}

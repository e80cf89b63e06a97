import { config } from 'zod'

// The content policy lets no text be evaluated. zod would try once, to see whether it may, and the browser report it as an attack.
config({ jitless: true })

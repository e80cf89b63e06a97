// Next runs this in the browser before anything else.
import '#app/_sync/no-eval.ts'

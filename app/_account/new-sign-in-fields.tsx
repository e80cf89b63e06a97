import { Field } from '#app/_ui/field.tsx'

interface Props {
  /** What is wrong with each, as the server says. */
  readonly errors: Readonly<Record<string, string>>
}

/** The e-mail address and the password of a new account. */
export function NewSignInFields({ errors }: Props) {
  return (
    <>
      <Field
        label="E-mail address"
        name="email"
        type="email"
        autoComplete="username"
        required
        maxLength={200}
        error={errors.email}
      />
      <Field
        label="Password"
        hint="Ten letters or more; a few words are best."
        name="password"
        type="password"
        autoComplete="new-password"
        required
        maxLength={200}
        error={errors.password}
      />
    </>
  )
}

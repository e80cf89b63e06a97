'use client'

import { useId, useState } from 'react'
import { newId } from '#app/_frame/new-id.ts'
import { useStrip } from '#app/_frame/strip.tsx'
import { useEdit } from '#app/_frame/use-edit.ts'
import { Button } from '#app/_ui/button.tsx'
import { countOf } from '#app/_words/clock.ts'
import { kitChangeText } from '#app/_words/kit-piece.ts'
import { templateWords } from '#app/_words/kitchen-template.ts'
import { keepIds, kitChanges } from '#lib/domain/kit-changes.ts'
import type { Kit, Kitchen } from '#lib/domain/kitchen.ts'
import { KITCHEN_TEMPLATES, type KitchenTemplate, templateKit } from '#lib/domain/kitchen-templates.ts'
import { replaceKit } from '#lib/plan/commands/kitchen.ts'
import css from './kitchens.module.css'

/** Takes another kind of kitchen in place of this one: first it says what would change, then it is one edit. */
export function TemplatePicker({ kitchen }: { readonly kitchen: Kitchen }) {
  const { change, tell } = useEdit()
  const show = useStrip()
  const id = useId()
  const [chosen, setChosen] = useState<{ readonly template: KitchenTemplate; readonly kit: readonly Kit[] } | null>(null)
  const changes = chosen ? kitChanges(kitchen.kit, keepIds(kitchen.kit, chosen.kit)) : []

  const take = () => {
    if (!chosen) return
    const before = kitchen.kit
    if (!tell((doc) => replaceKit(doc, kitchen.id, keepIds(before, chosen.kit)))) return
    setChosen(null)
    show(`${kitchen.name} is now “${templateWords[chosen.template].name}”: ${countOf(changes.length, 'change')}.`, () =>
      change((doc) => replaceKit(doc, kitchen.id, before)),
    )
  }

  return (
    <details className={css.fold}>
      <summary>Take another kind of kitchen</summary>
      <ul className={css.templates}>
        {KITCHEN_TEMPLATES.map((template) => {
          const isOpen = chosen?.template === template
          return (
            <li key={template}>
              <button
                type="button"
                className={css.template}
                aria-expanded={isOpen}
                aria-controls={isOpen ? id : undefined}
                onClick={() => setChosen(isOpen ? null : { template, kit: templateKit(template, newId) })}
              >
                <b>{templateWords[template].name}</b> <span>{templateWords[template].about}</span>
              </button>
              {isOpen ? (
                <div id={id} className={css.changes}>
                  {changes.length === 0 ? (
                    <p>That is what is here already.</p>
                  ) : (
                    <>
                      <p>What would change:</p>
                      <ul>
                        {changes.map((each) => (
                          <li key={kitChangeText(each)}>{kitChangeText(each)}</li>
                        ))}
                      </ul>
                      <Button onClick={take} aria-label={`Take “${templateWords[template].name}” for ${kitchen.name}`}>
                        Take it
                      </Button>
                    </>
                  )}
                </div>
              ) : null}
            </li>
          )
        })}
      </ul>
    </details>
  )
}

import { plainWords } from './page-text.ts'

type Json = unknown
type Fields = Readonly<Record<string, Json>>

/** What schema.org's Recipe gives, as plain text yet to be read. */
export interface LinkedRecipe {
  readonly title: string | null
  readonly yields: readonly string[]
  readonly ingredients: readonly string[]
  readonly steps: readonly { readonly text: string; readonly section: string | null }[]
  readonly prep: string | null
  readonly cook: string | null
  readonly total: string | null
  readonly diets: readonly string[]
}

// A page is not ours: these end a structure that is made to be large, not one that a recipe needs.
const DEEPEST = 12
const MOST_NODES = 20_000
const MOST_ITEMS = 1000

const isFields = (value: Json): value is Fields => typeof value === 'object' && value !== null && !Array.isArray(value)
const listOf = (value: Json): readonly Json[] =>
  Array.isArray(value) ? value : value === undefined || value === null ? [] : [value]
const field = (fields: Fields, name: string): Json => (Object.hasOwn(fields, name) ? fields[name] : undefined)

const textOf = (value: Json): string => {
  if (Array.isArray(value)) return typeof value[0] === 'string' ? textOf(value[0]) : ''
  if (typeof value === 'number' && Number.isFinite(value)) return String(value)
  if (typeof value === 'string') return plainWords(value).trim()
  if (isFields(value) && Object.hasOwn(value, '@value')) return textOf(value['@value'])
  return ''
}

const hasType = (fields: Fields, name: string): boolean =>
  listOf(field(fields, '@type')).some((type) => typeof type === 'string' && type.replace(/^.*[/#:]/u, '') === name)

/** The first Recipe in the data, wherever it stands: at the top, in an array, in @graph or in another thing's fields. */
const findRecipe = (data: Json): Fields | null => {
  const queue: { value: Json; depth: number }[] = [{ value: data, depth: 0 }]
  for (let at = 0; at < queue.length && at < MOST_NODES; at += 1) {
    const { value, depth } = queue[at] ?? { value: null, depth: 0 }
    if (isFields(value) && hasType(value, 'Recipe')) return value
    if (depth >= DEEPEST) continue
    const inner = Array.isArray(value) ? value : isFields(value) ? Object.values(value) : []
    for (const each of inner.slice(0, MOST_ITEMS))
      if (typeof each === 'object' && each !== null) queue.push({ value: each, depth: depth + 1 })
  }
  return null
}

/** Text, a PropertyValue (value, unit, name) or an ItemList of either. */
const ingredientTexts = (value: Json, depth = 0): readonly string[] =>
  listOf(value)
    .slice(0, MOST_ITEMS)
    .flatMap((each) => {
      if (typeof each === 'string')
        return plainWords(each)
          .split('\n')
          .map((line) => line.trim())
      if (!isFields(each) || depth >= DEEPEST) return []
      const items = field(each, 'itemListElement')
      if (items !== undefined) return ingredientTexts(items, depth + 1)
      if (field(each, 'item') !== undefined) return ingredientTexts(field(each, 'item'), depth + 1)
      const amount = textOf(field(each, 'value'))
      const unit = textOf(field(each, 'unitText'))
      const name = textOf(field(each, 'name')) || textOf(field(each, 'text'))
      return [[amount, unit, name].filter(Boolean).join(' ')]
    })

interface StepText {
  readonly text: string
  readonly section: string | null
}

/** Strings, HowToStep, HowToDirection, HowToSection and lists of them, in order. */
const stepTexts = (value: Json, section: string | null, depth = 0): readonly StepText[] =>
  listOf(value)
    .slice(0, MOST_ITEMS)
    .flatMap((each): readonly StepText[] => {
      if (typeof each === 'string')
        return plainWords(each)
          .split(/\r\n|[\n\r]/u)
          .map((line) => ({ text: line.trim(), section }))
      if (!isFields(each) || depth >= DEEPEST) return []
      const items = field(each, 'itemListElement') ?? field(each, 'steps') ?? field(each, 'item')
      if (hasType(each, 'HowToSection')) return stepTexts(items, textOf(field(each, 'name')) || section, depth + 1)
      const text = textOf(field(each, 'text'))
      if (text !== '') return [{ text: text.replaceAll('\n', ' '), section }]
      if (items !== undefined) {
        // A step given as several directions is one step.
        const inner = stepTexts(items, section, depth + 1)
        return hasType(each, 'HowToStep') ? [{ text: inner.map((one) => one.text).join(' '), section }] : inner
      }
      return [{ text: textOf(field(each, 'name')) || textOf(field(each, 'description')), section }]
    })

const yieldTexts = (value: Json): readonly string[] =>
  listOf(value)
    .slice(0, 10)
    .map((each) =>
      isFields(each) ? [textOf(field(each, 'value')), textOf(field(each, 'unitText'))].filter(Boolean).join(' ') : textOf(each),
    )

const dietWord = (value: Json): string => {
  const name = textOf(isFields(value) ? (field(value, '@id') ?? field(value, 'name')) : value).replace(/^.*[/#:]/u, '')
  return /^[A-Za-z]{3,30}Diet$/.test(name)
    ? name
        .replace(/Diet$/, '')
        .replace(/(?<=[a-z])(?=[A-Z])/g, '-')
        .toLowerCase()
    : ''
}

/** The recipe in one JSON-LD text; null when it is no JSON or holds no Recipe. */
export const readLinkedData = (json: string): LinkedRecipe | null => {
  let data: Json
  try {
    data = JSON.parse(json)
  } catch {
    return null
  }
  const recipe = findRecipe(data)
  if (!recipe) return null
  const steps = stepTexts(field(recipe, 'recipeInstructions') ?? field(recipe, 'step'), null)
  return {
    title: textOf(field(recipe, 'name')).replaceAll('\n', ' ') || null,
    yields: yieldTexts(field(recipe, 'recipeYield') ?? field(recipe, 'yield')).filter(Boolean),
    ingredients: ingredientTexts(field(recipe, 'recipeIngredient') ?? field(recipe, 'ingredients')).filter(Boolean),
    steps: steps.filter((step) => step.text !== ''),
    prep: textOf(field(recipe, 'prepTime')) || null,
    cook: textOf(field(recipe, 'cookTime')) || textOf(field(recipe, 'performTime')) || null,
    total: textOf(field(recipe, 'totalTime')) || null,
    diets: listOf(field(recipe, 'suitableForDiet')).map(dietWord).filter(Boolean),
  }
}

const ISO =
  /^P(?:(\d{1,4})Y)?(?:(\d{1,4})M)?(?:(\d{1,4})W)?(?:(\d{1,4})D)?(?:T(?:(\d{1,5}(?:\.\d{1,3})?)H)?(?:(\d{1,6})M)?(?:(\d{1,7}(?:\.\d{1,9})?)S)?)?$/iu

/** Minutes of an ISO 8601 duration as pages write them ("P0Y0M0DT1H30M0.000S"); null when it has years or months, is nothing, or is none. */
export const isoMinutes = (text: string): number | null => {
  const found = ISO.exec(text.trim())
  if (!found) return null
  const part = (at: number) => Number(found[at] ?? 0)
  if (part(1) > 0 || part(2) > 0) return null
  const minutes = ((part(3) * 7 + part(4)) * 24 + part(5)) * 60 + part(6) + part(7) / 60
  return minutes > 0 ? minutes : null
}

import { posix } from 'node:path'
import ts from 'typescript'
import { LAYERS, type Layer } from './layers.ts'
import type { Source } from './tree.ts'

interface Import {
  readonly from: string
  readonly spec: string
  readonly typeOnly: boolean
  /** A worker is a program of its own: it may know what its starter sends it. */
  readonly worker: boolean
}

const parse = (source: Source): ts.SourceFile =>
  ts.createSourceFile(
    source.path,
    source.text,
    ts.ScriptTarget.Latest,
    true,
    source.path.endsWith('x') ? ts.ScriptKind.TSX : ts.ScriptKind.TS,
  )

const visit = (node: ts.Node, see: (node: ts.Node) => void): void => {
  see(node)
  ts.forEachChild(node, (child) => visit(child, see))
}

const read = new WeakMap<Source, Import[]>()

/** Every import of a file: static, re-exported, dynamic, of a type, and of a worker by `new URL('./x.ts', import.meta.url)`. */
export const importsOf = (source: Source): readonly Import[] => {
  const known = read.get(source)
  if (known) return known
  const found: Import[] = []
  read.set(source, found)
  const add = (spec: ts.Node | undefined, typeOnly: boolean, worker = false) => {
    if (spec && ts.isStringLiteralLike(spec)) found.push({ from: source.path, spec: spec.text, typeOnly, worker })
  }
  visit(parse(source), (node) => {
    if (ts.isImportDeclaration(node)) add(node.moduleSpecifier, node.importClause?.isTypeOnly ?? false)
    else if (ts.isExportDeclaration(node)) add(node.moduleSpecifier, node.isTypeOnly)
    else if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument)) add(node.argument.literal, true)
    else if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword) add(node.arguments[0], false)
    else if (
      ts.isNewExpression(node) &&
      node.expression.getText() === 'URL' &&
      node.arguments?.[1]?.getText() === 'import.meta.url'
    ) {
      const spec = node.arguments[0]
      if (spec && ts.isStringLiteralLike(spec) && /\.tsx?$/.test(spec.text)) add(spec, false, true)
    }
  })
  return found
}

/** The path that an import of ours leads to; null for a package. */
export const targetOf = ({ from, spec }: Import): string | null => {
  if (spec.startsWith('.')) return posix.join(posix.dirname(from), spec)
  if (spec.startsWith('#')) return spec.slice(1)
  return null
}

const layerOf = (path: string): Layer | undefined => LAYERS.find((layer) => layer.holds.test(path))

/** Imports that a layer may not make, and paths that climb or belong to no layer. */
export const forbidden = (tree: readonly Source[]): string[] =>
  tree.flatMap((source) => {
    const layer = layerOf(source.path)
    if (!layer) return [`${source.path} is in no layer`]
    return importsOf(source).flatMap((each) => {
      const target = targetOf(each)
      if (each.spec.startsWith('../')) return [`${source.path} climbs to ${each.spec}`]
      if (target === null)
        return layer.packages.some((allowed) => allowed.test(each.spec))
          ? []
          : [`${source.path} may not use the package ${each.spec}`]
      if (/\.(css|json)$/.test(target)) return []
      const other = layerOf(target)
      return other && layer.layers.includes(other.name) ? [] : [`${source.path} (${layer.name}) may not import ${target}`]
    })
  })

/** Rings of files that import each other, each named once, from its first path. */
export const cycles = (tree: readonly Source[]): string[] => {
  const paths = new Set(tree.map((source) => source.path))
  const graph = new Map(
    tree.map((source) => [
      source.path,
      importsOf(source)
        .filter((each) => !each.worker)
        .map(targetOf)
        .filter((target): target is string => target !== null && paths.has(target)),
    ]),
  )
  const found = new Set<string>()
  const done = new Set<string>()
  const walk = (path: string, trail: readonly string[]): void => {
    const seenAt = trail.indexOf(path)
    if (seenAt >= 0) {
      const ring = trail.slice(seenAt)
      const least = ring.indexOf([...ring].sort()[0] ?? path)
      found.add([...ring.slice(least), ...ring.slice(0, least)].join(' → '))
      return
    }
    if (done.has(path)) return
    for (const next of graph.get(path) ?? []) walk(next, [...trail, path])
    done.add(path)
  }
  for (const path of graph.keys()) walk(path, [])
  return [...found]
}

const AMBIENT = new Set([
  'Date',
  'performance',
  'crypto',
  'process',
  'globalThis',

  'fetch',
  'setTimeout',
  'setInterval',
  'queueMicrotask',
  'console',
])

/** Clocks, dice and other reaches into the world below lib/: time and chance come in as arguments. */
export const impurities = (tree: readonly Source[]): string[] =>
  tree
    .filter((source) => source.path.startsWith('lib/'))
    .flatMap((source) => {
      const found: string[] = []
      visit(parse(source), (node) => {
        if (ts.isPropertyAccessExpression(node) && ['Math.random', 'Temporal.Now'].includes(node.getText()))
          found.push(`${source.path} uses ${node.getText()}`)
        if (!ts.isIdentifier(node) || !AMBIENT.has(node.text)) return
        const named = ts.isPropertyAccessExpression(node.parent) && node.parent.name === node
        const declared = 'name' in node.parent && node.parent.name === node
        if (!named && !declared && !ts.isTypeReferenceNode(node.parent)) found.push(`${source.path} uses ${node.text}`)
      })
      return found
    })

const has = (source: Source, directive: string): boolean =>
  new RegExp(`^(?:\\s|//.*\\n|/\\*[\\s\\S]*?\\*/)*['"]${directive}['"]`).test(source.text)

/** Ways from a client component to the server's code: what a browser would be sent. Server actions and types end the way. */
export const leaks = (tree: readonly Source[]): string[] => {
  const byPath = new Map(tree.map((source) => [source.path, source]))
  const found = new Set<string>()
  const walk = (source: Source, root: string, seen: Set<string>): void => {
    for (const each of importsOf(source)) {
      if (each.typeOnly) continue
      const target = targetOf(each)
      if (target === null) {
        if (/^(node:|@prisma\/|ws$|next-auth$)/.test(each.spec)) found.add(`${root} reaches ${each.spec} by ${source.path}`)
        continue
      }
      if (/^(server|prisma)\//.test(target)) found.add(`${root} reaches ${target} by ${source.path}`)
      const next = byPath.get(target)
      if (!next || seen.has(target) || has(next, 'use server')) continue
      seen.add(target)
      walk(next, root, seen)
    }
  }
  for (const source of tree)
    if (has(source, 'use client') || /^app\/_sync\/(local-order|order-worker|hash-worker)\.ts$/.test(source.path))
      walk(source, source.path, new Set())
  return [...found]
}

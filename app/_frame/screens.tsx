'use client'

import dynamic from 'next/dynamic'

// Without words of their own for while they load: the screen before stays until the next one is there.

export const MenuScreen = dynamic(() => import('#app/_menu/menu-screen.tsx').then((module) => module.MenuScreen))
export const OrderScreen = dynamic(() => import('#app/_order/order-screen.tsx').then((module) => module.OrderScreen))
export const CooksScreen = dynamic(() => import('#app/_cooks/cooks-screen.tsx').then((module) => module.CooksScreen))
export const RecipeScreen = dynamic(() => import('#app/_recipes/recipe-screen.tsx').then((module) => module.RecipeScreen))
export const FirstVerdict = dynamic(() => import('#app/_evenings/first-verdict.tsx').then((module) => module.FirstVerdict))
export const DrinksScreen = dynamic(() => import('#app/_drinks/drinks-screen.tsx').then((module) => module.DrinksScreen))

// In the browser alone: words that are shared letter by letter are read from the document itself,
export const DishScreen = dynamic(() => import('#app/_dish/dish-screen.tsx').then((module) => module.DishScreen), {
  ssr: false,
  loading: () => null,
})
export const ChoresScreen = dynamic(() => import('#app/_chores/chores-screen.tsx').then((module) => module.ChoresScreen), {
  ssr: false,
  loading: () => null,
})
// and what late changes would come to is tried on a copy of it.
export const GuestsScreen = dynamic(() => import('#app/_guests/guests-screen.tsx').then((module) => module.GuestsScreen), {
  ssr: false,
  loading: () => null,
})
export const NeedsScreen = dynamic(() => import('#app/_guests/needs-screen.tsx').then((module) => module.NeedsScreen))
export const TonightScreen = dynamic(() => import('#app/_tonight/tonight-screen.tsx').then((module) => module.TonightScreen))
export const BringScreen = dynamic(() => import('#app/_bring/bring-screen.tsx').then((module) => module.BringScreen))
export const PrintScreen = dynamic(() => import('#app/_print/print-screen.tsx').then((module) => module.PrintScreen))
export const SheetScreen = dynamic(() => import('#app/_print/sheet-screen.tsx').then((module) => module.SheetScreen))
export const ShoppingScreen = dynamic(() => import('#app/_shopping/shopping-screen.tsx').then((module) => module.ShoppingScreen))
export const HomeScreen = dynamic(() => import('#app/_bring/home-screen.tsx').then((module) => module.HomeScreen))

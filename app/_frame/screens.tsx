'use client'

import dynamic from 'next/dynamic'

// The screens write to the shared plan, so they load Yjs: in the browser alone.

export const MenuScreen = dynamic(() => import('#app/_menu/menu-screen.tsx').then((module) => module.MenuScreen), {
  ssr: false,
  loading: () => null,
})
export const DishScreen = dynamic(() => import('#app/_dish/dish-screen.tsx').then((module) => module.DishScreen), {
  ssr: false,
  loading: () => null,
})
export const OrderScreen = dynamic(() => import('#app/_order/order-screen.tsx').then((module) => module.OrderScreen), {
  ssr: false,
  loading: () => null,
})
export const CooksScreen = dynamic(() => import('#app/_cooks/cooks-screen.tsx').then((module) => module.CooksScreen), {
  ssr: false,
  loading: () => null,
})
export const RecipeScreen = dynamic(() => import('#app/_recipes/recipe-screen.tsx').then((module) => module.RecipeScreen), {
  ssr: false,
  loading: () => null,
})
export const FirstVerdict = dynamic(() => import('#app/_evenings/first-verdict.tsx').then((module) => module.FirstVerdict), {
  ssr: false,
  loading: () => null,
})
export const ChoresScreen = dynamic(() => import('#app/_chores/chores-screen.tsx').then((module) => module.ChoresScreen), {
  ssr: false,
  loading: () => null,
})
export const DrinksScreen = dynamic(() => import('#app/_drinks/drinks-screen.tsx').then((module) => module.DrinksScreen), {
  ssr: false,
  loading: () => null,
})
export const GuestsScreen = dynamic(() => import('#app/_guests/guests-screen.tsx').then((module) => module.GuestsScreen), {
  ssr: false,
  loading: () => null,
})
export const NeedsScreen = dynamic(() => import('#app/_guests/needs-screen.tsx').then((module) => module.NeedsScreen), {
  ssr: false,
  loading: () => null,
})
export const TonightScreen = dynamic(() => import('#app/_tonight/tonight-screen.tsx').then((module) => module.TonightScreen), {
  ssr: false,
  loading: () => null,
})
export const BringScreen = dynamic(() => import('#app/_bring/bring-screen.tsx').then((module) => module.BringScreen), {
  ssr: false,
  loading: () => null,
})
export const PrintScreen = dynamic(() => import('#app/_print/print-screen.tsx').then((module) => module.PrintScreen), {
  ssr: false,
  loading: () => null,
})
export const SheetScreen = dynamic(() => import('#app/_print/sheet-screen.tsx').then((module) => module.SheetScreen), {
  ssr: false,
  loading: () => null,
})
export const ShoppingScreen = dynamic(
  () => import('#app/_shopping/shopping-screen.tsx').then((module) => module.ShoppingScreen),
  {
    ssr: false,
    loading: () => null,
  },
)
export const HomeScreen = dynamic(() => import('#app/_bring/home-screen.tsx').then((module) => module.HomeScreen), {
  ssr: false,
  loading: () => null,
})

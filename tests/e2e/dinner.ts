/** A three-course dinner as somebody might have it in their notes: a menu, then its recipes. One amount and one heat are not clear. */
export const DINNER = `Starter: Beetroot soup with dill
Main: Lemon chicken legs
Pudding: Baked pears

Beetroot soup with dill
Serves 6

750 g beetroot, peeled and diced
1 onion or 2 shallots, chopped
30 g butter
1 litre vegetable stock
dill

1. Soften the onion in the butter in a large pan for 10 minutes.
2. Add the beetroot and the stock and simmer for 35 to 40 minutes, until the beetroot is soft.
3. Blend until smooth, 5 minutes.

Lemon chicken legs
Serves 6

6 chicken legs
2 lemons
4 tbsp olive oil
1 tsp salt

1. Rub the legs with the oil, lemon juice and salt and leave in the fridge for at least 1 hour.
2. Roast at 200 for 45 minutes, until the juices run clear and the core is 75 °C.
3. Rest for 10 minutes.

Baked pears
Serves 6

6 pears
75 g soft brown sugar
250 ml red wine

1. Halve the pears, sprinkle with the sugar and pour over the wine.
2. Bake at 180 °C for 40 minutes, basting once.
`

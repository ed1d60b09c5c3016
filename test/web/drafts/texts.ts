/** A recipe as people paste it: lines that this kitchen knows, lines it does not, and lines that can be read two ways. */
export const traybake = `Chicken traybake

Serves 4

Ingredients
1 tbsp olive oil
2 x 400 g tins chickpeas, drained
700 g squash, peeled and cut into chunks
2-3 cloves garlic, crushed
1 tsp sumac
salt and pepper

For the sauce:
2 x 500 g pots Greek yoghurt

Method
1. Roast at 200C for 45 minutes.
2. Stir the yoghurt for the sauce.
`;

/** What nobody would be asked about in the example kitchen. */
export const plain = `Garlic oil

Makes 500 ml

Ingredients
500 ml olive oil
3 cloves garlic

Method
Simmer the oil with the garlic for 20 minutes.
`;

export const jsonLd = (...recipes: { name: string; lines: string[]; method?: string }[]): string =>
  JSON.stringify(
    recipes.map(({ name, lines, method = 'Simmer for 20 minutes.' }) => ({
      '@context': 'https://schema.org',
      '@type': 'Recipe',
      name,
      recipeYield: '4 portions',
      recipeIngredient: lines,
      recipeInstructions: method,
    })),
  );

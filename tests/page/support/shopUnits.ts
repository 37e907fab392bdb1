/** What only a text in the shop's units has. */
export const SHOP = /°F|\d in\b(?! \d)|BTU|\blb\b|\bft\b/;

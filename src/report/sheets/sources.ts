/** What the numbers rest on, for whoever wants to check them. */
export const SOURCES: string[] = [
  'Free convection: Churchill & Chu (1975), cylinders and plates; Radziemska & Lewandowski (2001), plates facing down; textbook relations for plates facing up (Incropera & DeWitt).',
  'Wind and through-flow: Churchill & Bernstein (1977), cylinders; flat plate and mixed relations (Incropera & DeWitt); Gnielinski and Hausen for ducts (VDI Heat Atlas, G1).',
  'Radiation of gas: weighted sum of grey gases, Smith, Shen & Friedman (1982); surfaces by radiosity.',
  'Steel: EN 1993-1-2:2005, 3.4.1 and Annex C. Gas: NASA 7-coefficient polynomials. Outdoors: US Standard Atmosphere 1976.',
  'Friction in stacks: Colebrook and Haaland. Oxygen that a fire can use: 13.1 MJ a kilogram (Huggett, 1980).',
  'Measured fires it is held against: Steckler, Quintiere & Rinkinen, NBSIR 82-2520 (1982), vent flows; the thin steel room of SP Sweden (Sjostrom & Wickstrom).',
];

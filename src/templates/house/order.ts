import { results, sheet, table, top } from "../layout.ts";

/** Everything by the roll, the sheet and the box, with prices. */
export const order = sheet(
  "Order",
  "Everything by the roll, the sheet and the box, with prices.",
  [
    top("Order list", "Quantities come from the walls, openings and cutting lists; prices are typed here."),
    table(
      "Prices",
      "Prices a pack",
      ["item", "price"],
      [
        ["veneer panel 4x32", 540],
        ["lining sheet", 34],
        ["membrane", 165],
        ["tape", 46],
        ["mineral wool board", 58],
        ["furring strip", 7.5],
        ["vent screen", 9],
        ["buck stock", 31],
        ["sealant", 9.5],
        ["furring screws", 96],
        ["panel screws", 58],
        ["concrete", 172],
      ],
      6,
    ),
    table(
      "Pours",
      "Concrete",
      ["pour", "length ft", "width ft", "depth in", "count"],
      [
        ["slab between the frost walls", "46'-8\"", "30'-8\"", 5, 1],
        ["frost wall", "157'-4\"", "0'-8\"", 50, 1],
        ["footing", "157'-4\"", "1'-4\"", 8, 1],
        ["pad under a ridge post", "3'-0\"", "3'-0\"", 12, 2],
      ],
      2,
    ),
    table(
      "SealantRuns",
      "Sealant under the sill plates",
      ["run", "length ft"],
      [["two beads under the plates, without doors", "=2*(159.5-3.333*2-12)"]],
      0,
    ),
    results("Single items", [
      { label: "Concrete", name: "ConcreteOrder", formula: "=SILL.CONCRETE(Pours,Basis)" },
      {
        label: "Sealant",
        name: "SealantOrder",
        formula: '=SILL.BEAD(INDEX(SealantRuns,2,2),"3/8","3/8",Basis)',
        unit: "cartridges",
        format: "0",
      },
    ]),
  ],
  [
    { heading: "Membrane", formula: "=SILL.ROLLS(Walls,36,75,Openings,Basis)", name: "OrderMembrane", room: 5 },
    { heading: "Tape", formula: "=SILL.TAPE(Openings,75,Basis)", name: "OrderTape", room: 5 },
    { heading: "Boards", formula: '=SILL.BOARDS(Walls,"4x8",{3,3},Openings,Basis)', name: "OrderBoards", room: 6 },
    { heading: "Furring", formula: "=SILL.FURRING(Walls,10,Openings,Basis)", name: "OrderFurring", room: 5 },
    { heading: "Screen", formula: "=SILL.SCREEN(Walls,10,Openings,Basis)", name: "OrderScreen", room: 5 },
  ],
);

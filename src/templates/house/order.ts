import { results, sheet, table, top } from "../kit/layout.ts";

/** A line of the order list from what a takeoff function gives: quantity, unit and packs stand below its headings. */
const line = (item: string, from: string, pack: string) =>
  [item, `=INDEX(${from},2,2)`, `=INDEX(${from},2,3)`, `=INDEX(${from},2,4)`, pack] as const;
/** A line that is bought by the piece. */
const pieces = (item: string, formula: string, unit: string) => [item, formula, unit, formula, unit] as const;

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
        ["veneer panel", 540],
        ["lining plywood", 34],
        ["self-adhered membrane", 165],
        ["flashing tape", 46],
        ["mineral wool board", 58],
        ["polyisocyanurate board", 62],
        ["expanded polystyrene", 44],
        ["furring strip", 7.5],
        ["vent screen", 9],
        ["buck stock", 31],
        ["sealant", 9.5],
        ["furring screws", 96],
        ["panel screws", 58],
        ["concrete", 172],
      ],
    ),
    table(
      "SlabEdge",
      "Slab edge: length, and depth of its insulation",
      ["wall", "length ft", "height ft"],
      [["slab edge", "=2*(FloorWidth+FloorLength)", 4]],
      0,
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
      "FurringScrewRows",
      "Furring screws, 16 in apart on the strips",
      ["row", "length ft", "spacing in", "rows", "count"],
      [
        [
          "half of the strips, without their waste",
          '=INDEX(OrderFurring,2,2)/(1+VLOOKUP("Strip waste",Basis,2,FALSE))/2',
          16,
          1,
          2,
        ],
      ],
      0,
    ),
    table(
      "PanelScrewRows",
      "Panel screws, 6 in apart in two rows on each column",
      ["row", "length ft", "spacing in", "rows", "count"],
      [["columns", "=INDEX(Walls,2,3)", 6, 2, "=COUNT(INDEX(Columns,0,2))"]],
      0,
    ),
    table(
      "SealantRuns",
      "Sealant under the sill plates, not at doors and the wide opening",
      ["run", "length ft"],
      [
        ["sill plates of all walls", '=SUMIF(INDEX(Columns,0,4),"end",INDEX(Columns,0,2))'],
        ["less doors and the wide opening", '=-SUMIF(INDEX(FloorBucks,0,1),"*head",INDEX(FloorBucks,0,2))/12'],
      ],
      0,
    ),
    table("FurringBoxes", "Boxes", ["pack", "holds"], [["furring screws", 250]], 0),
    table("PanelBoxes", "Boxes", ["pack", "holds"], [["panel screws", 250]], 0),
    results("Single items", [
      {
        label: "Roof panels",
        name: "RoofPanels",
        formula: '=SILL.SHEETS_COUNT(RoofArea,"4x32",Basis)',
        unit: "panels",
        format: "0",
      },
      {
        label: "Sealant, two beads",
        name: "SealantOrder",
        formula: '=SILL.BEAD(2*SUM(INDEX(SealantRuns,0,2)),"3/8","3/8",Basis)',
        unit: "cartridges",
        format: "0",
      },
      { label: "Concrete", name: "ConcreteOrder", formula: "=SILL.CONCRETE(Pours,Basis)" },
      {
        label: "Materials in all",
        name: "MaterialTotal",
        formula: "=MAX(INDEX(Priced,0,4))",
        unit: "$",
        format: "#,##0",
      },
    ]),
    table(
      "OrderList",
      "Order list",
      ["item", "quantity", "unit", "packs", "pack"],
      [
        pieces("veneer panel", "=WallPanels+RoofPanels", "panel"),
        pieces("lining plywood", "=LiningSheets", "sheet"),
        line("self-adhered membrane", "OrderMembrane", "roll"),
        ["self-adhered membrane", "=INDEX(OrderRoofMembrane,2,2)", "ft", "=INDEX(OrderRoofMembrane,2,4)", "roll"],
        line("flashing tape", "OrderTape", "roll"),
        line("mineral wool board", "OrderBoards", "board"),
        line("polyisocyanurate board", "OrderRoofBoards", "board"),
        line("expanded polystyrene", "OrderEdgeBoards", "board"),
        line("furring strip", "OrderFurring", "strip"),
        line("vent screen", "OrderScreen", "piece"),
        pieces("buck stock", "=BuckLengths", "length"),
        line("furring screws", "OrderFurringScrews", "box"),
        line("panel screws", "OrderPanelScrews", "box"),
        pieces("sealant", "=SealantOrder", "cartridge"),
        pieces("concrete", "=ConcreteOrder", "yd3"),
      ],
      3,
    ),
  ],
  [
    { heading: "With prices", formula: "=SILL.COST_ORDER(OrderList,Prices)", name: "Priced", room: 24 },
    { heading: "Membrane, walls", formula: "=SILL.ROLLS(Walls,36,75,Openings,Basis)", name: "OrderMembrane", room: 5 },
    { heading: "Membrane, roof", formula: "=SILL.ROLLS(RoofPlanes,36,75,Basis)", name: "OrderRoofMembrane", room: 5 },
    { heading: "Tape", formula: "=SILL.TAPE(Openings,75,Basis)", name: "OrderTape", room: 5 },
    {
      heading: "Boards, walls",
      formula: '=SILL.BOARDS(Walls,"4x8",{3,3},Openings,Basis)',
      name: "OrderBoards",
      room: 6,
    },
    {
      heading: "Boards, roof",
      formula: '=SILL.BOARDS(RoofPlanes,"4x8",{3,3,3},Basis)',
      name: "OrderRoofBoards",
      room: 6,
    },
    {
      heading: "Boards, slab edge",
      formula: '=SILL.BOARDS(SlabEdge,"4x8",{3},Basis)',
      name: "OrderEdgeBoards",
      room: 6,
    },
    { heading: "Furring", formula: "=SILL.FURRING(Walls,10,Openings,Basis)", name: "OrderFurring", room: 5 },
    { heading: "Screen", formula: "=SILL.SCREEN(Walls,10,Openings,Basis)", name: "OrderScreen", room: 5 },
    {
      heading: "Furring screws",
      formula: "=SILL.SCREWS(FurringScrewRows,FurringBoxes,Basis)",
      name: "OrderFurringScrews",
      room: 5,
    },
    {
      heading: "Openings on the floor",
      formula: '=FILTER(Openings,LEFT(INDEX(Openings,0,5),1)="0")',
      name: "FloorOpenings",
      room: 12,
      columns: 7,
    },
    { heading: "Their bucks", formula: "=SILL.BUCKS(FloorOpenings,Basis)", name: "FloorBucks", room: 26 },
    {
      heading: "Panel screws",
      formula: "=SILL.SCREWS(PanelScrewRows,PanelBoxes,Basis)",
      name: "OrderPanelScrews",
      room: 5,
    },
  ],
);

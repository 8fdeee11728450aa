/**
 * A commented file to start a piece from: a shelf that passes every check.
 *
 * @param name of the piece, small letters, digits and hyphens
 * @param schema where an editor finds what can be written: a path or an address
 */
export const newPiece = (name: string, schema: string): string => `# yaml-language-server: $schema=${schema}
# A piece told in one file: change what is here, then
#   tenonwright explain ${name}.yaml     says back what was understood
#   tenonwright check ${name}.yaml       checks it and writes nothing
#   tenonwright make ${name}.yaml        writes drawings, set-up cards and templates

design: ${name}                           # the folder its files are written in
title: ${title(name)}
wood: white ash
piece: [width, depth, height]             # the box it fills: left to right, front to back, floor to top

# What can be changed: a size from the least to the most, and what it is. Each becomes an option: --width 700.
# Bare numbers are mm; 7/8 in, 30 cm and 8° are understood too. A count begins with 'how many', a choice with 'one of'.
dimensions:
  width: 500 from 400 to 900; Outside, left to right
  depth: 250 from 200 to 350; Front to back
  height: 800 from 500 to 1200; Floor to the top of the sides
  board: 22 from 18 to 30; Thickness of every board
  shelves: how many 2 from 1 to 3; Shelves between bottom and top
  rail: 70 from 50 to 100; Width of the rail at the back

# What must hold besides, and what to do when it does not.
must:
  - (height - (shelves + 3) × board) / (shelves + 1) >= 120: take fewer shelves or more height

# Boards in the order you would build them. A place may name only boards above it.
boards:
  side:
    grain: up                             # the way its grain runs: up, left-right or front-back
    face: right                           # where its reference face looks
    left: piece                           # its left side stands at the left side of the piece
    thick: board
    like: piece                           # all that is not said is as large as the piece
    mirrored: left-right                  # two of them: left side and right side

  bottom board:
    grain: left-right
    face: up
    between: left side and right side     # its ends are cut to them
    bottom: board above floor
    thick: board
    like: side

  top board:
    grain: left-right
    face: up
    between: left side and right side
    top: side                             # flush with the top of the sides
    thick: board
    like: side

  shelf:
    grain: left-right
    face: up
    between: left side and right side
    evenly: between bottom board and top board
    thick: board
    use: shelf                            # what it is for: shelf, step, seat, table top; its loads follow
    front: 5 short of side                # 5 towards the middle from the front of the sides
    back: board short of side
    repeat: shelves                       # shelf 1, shelf 2 …

  rail:
    grain: left-right
    face: front
    between: left side and right side
    top: bottom of top board
    wide: rail
    back: side
    thick: board

# Which boards are joined by loose tenons: 'A to B' joins every pair that touches. After the colon what is not as usual.
joints:
  bottom board and top board to side: { tenons: 3 }
  shelf to side: { tenons: 2 }
  rail to side:
`;

/** `garden-shelf` is a garden shelf. */
const title = (name: string): string => name.charAt(0).toUpperCase() + name.slice(1).replaceAll('-', ' ');

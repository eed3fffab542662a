// SPDX-License-Identifier: GPL-3.0-or-later
// Packs strips with general-purpose packing libraries and prints how long each made them.
//
// In (JSON): [{"name", "width", "least", "leastTurned", "pieces": [[across, along], ...]}]. Out: a line "NAME LIBRARY TURNS LENGTH"
// each, TURNS 0 or 1, LENGTH 0 where none up to twice the least was enough. All of them pack boxes of a given size,
// so the box is made one unit longer from the least length on until all pieces are in one box; of their settings
// the best counts.

import { pack2D, BestAreaFit, BestLongSideFit, BestShortSideFit, BottomLeft } from "binpackingjs/2d";
import guillotine from "guillotine-packer";
import { MaxRectsPacker, PACKING_LOGIC } from "maxrects-packer/dist/maxrects-packer.mjs";

const heuristics = [BestAreaFit, BestLongSideFit, BestShortSideFit, BottomLeft];

function fitsGuillotine(strip, length, mayTurn) {
    const items = strip.pieces.map(([width, height]) => ({ width, height }));
    try {
        const boxes = guillotine.packer(
            { binWidth: strip.width, binHeight: length, items },
            { kerfSize: 0, allowRotation: mayTurn },
        );
        return boxes !== null && boxes.length === 1 && boxes[0].length === items.length;
    } catch {
        return false; // it throws where a piece is larger than the box
    }
}

function fitsBinpacking(strip, length, mayTurn) {
    const boxes = strip.pieces.map(([width, height]) => ({ width, height, constrainRotation: !mayTurn }));
    return heuristics.some((Heuristic) => {
        const packed = pack2D({
            bins: [{ width: strip.width, height: length }],
            boxes,
            heuristic: new Heuristic(),
        });
        return packed.unpackedBoxes.length === 0;
    });
}

function fitsMaxrects(strip, length, mayTurn) {
    return [PACKING_LOGIC.MAX_AREA, PACKING_LOGIC.MAX_EDGE].some((logic) => {
        const packer = new MaxRectsPacker(strip.width, length, 0, {
            smart: false,
            pot: false,
            square: false,
            allowRotation: mayTurn,
            logic,
        });
        packer.addArray(strip.pieces.map(([width, height]) => ({ width, height })));
        return packer.bins.length === 1 && packer.rects.every((rect) => !rect.oversized);
    });
}

const libraries = {
    "guillotine-packer": fitsGuillotine,
    binpackingjs: fitsBinpacking,
    "maxrects-packer": fitsMaxrects,
};

function shortest(fits, strip, mayTurn) {
    const least = mayTurn ? strip.leastTurned : strip.least;
    for (let length = least; length <= 2 * least; ++length) {
        if (fits(strip, length, mayTurn)) return length;
    }
    return 0;
}

let input = "";
for await (const part of process.stdin) input += part;
for (const strip of JSON.parse(input)) {
    for (const [library, fits] of Object.entries(libraries)) {
        for (const mayTurn of [false, true])
            console.log(strip.name, library, mayTurn ? 1 : 0, shortest(fits, strip, mayTurn));
    }
}

// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/cutting_bench/cut_file.h"

#include "app/desk/formats.h"
#include "app/papers/decal_shapes.h"
#include "app/places/cutting_bench/bench_words.h"

#include <QCoreApplication>

namespace holdfast::app {

namespace {

struct CutFile {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::CutFile)
};

OutlinePoint pointOf(const QPainterPath::Element& element) {
    return {element.x, element.y};
}

} // namespace

std::vector<OutlineLoop> loopsOf(const QPainterPath& shape) {
    std::vector<OutlineLoop> loops;
    for (int at = 0; at < shape.elementCount(); ++at) {
        const QPainterPath::Element element = shape.elementAt(at);
        switch (element.type) {
        case QPainterPath::MoveToElement:
            loops.push_back({pointOf(element), {}});
            break;
        case QPainterPath::LineToElement:
            loops.back().stretches.push_back({false, {}, {}, pointOf(element)});
            break;
        case QPainterPath::CurveToElement:
            loops.back().stretches.push_back(
                {true, pointOf(element), pointOf(shape.elementAt(at + 1)), pointOf(shape.elementAt(at + 2))});
            at += 2;
            break;
        case QPainterPath::CurveToDataElement:
            break;
        }
    }
    std::erase_if(loops, [](const OutlineLoop& loop) { return loop.stretches.empty(); });
    return loops;
}

Result<std::string> cutFileOf(const ReckonedShop& shop, const Nest& nest, CutFileWish wish,
                              const std::function<bool(double)>& goesOn) {
    const DecalsOnGarments decals = decalsOnGarments(shop.facts);
    std::vector<DecalOutline> outlines;
    DecalShapes shapes;
    for (const NestedDecal& nested : nest.decals) {
        if (goesOn && !goesOn(static_cast<double>(outlines.size()) / static_cast<double>(nest.decals.size())))
            return std::string{};
        const DecalOnGarment found = decalIn(decals, nested.decal);
        if (!found.decal)
            return plainError(inWindow(CutFile::tr("A decal on the bench is no longer there. Nest again.")));
        const QPainterPath& shape = shapes.of(*found.decal);
        if (shape.isEmpty())
            return fieldError("decals",
                              inWindow(CutFile::tr("%1: there is no artwork of it to cut. Choose other "
                                                   "artwork or wording, or leave it out.")
                                           .arg(decalTitle(shop.facts, found))));
        outlines.push_back({nested.decal, plain(decalNumber(shop.facts, found)), loopsOf(shape)});
    }
    if (wish.title.empty())
        wish.title =
            plain(QStringLiteral("%1, %2, %3")
                      .arg(rollLabel(shop.facts, nest.roll), words(shop.facts.films.at(nest.film).name()),
                           words(isoDate(shop.now.today()))));
    return cutFileSvg(nest, outlines, wish);
}

QString cutFileName(const ReckonedShop& shop, const Nest& nest) {
    // A shade may be named with letters that a file's name may not have.
    QString shade = words(shop.facts.films.at(nest.film).shade);
    for (QChar& letter : shade)
        if (!letter.isLetterOrNumber() && letter != u' ' && letter != u'-')
            letter = u'-';
    return QStringLiteral("%1 %2 %3.svg")
        .arg(rollLabel(shop.facts, nest.roll), shade, words(isoDate(shop.now.today())));
}

} // namespace holdfast::app

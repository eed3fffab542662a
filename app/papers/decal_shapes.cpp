// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/papers/decal_shapes.h"

#include "app/desk/formats.h"
#include "app/theme/wording_outline.h"
#include "core/cutting/cut_file.h"

namespace holdfast::app {

QPainterPath decalShape(const Decal& decal) {
    const auto* wording = std::get_if<Wording>(&decal.content);
    const QPainterPath outline =
        wording ? wordingOutline(*wording) : artworkOutline(words(std::get<Artwork>(decal.content).name));
    return laidInto(outline, static_cast<double>(decal.width.value), static_cast<double>(decal.height.value));
}

QString likenessOf(const Decal& decal) {
    const auto* wording = std::get_if<Wording>(&decal.content);
    return QStringLiteral("%1 %2 %3 %4 %5")
        .arg(decal.width.value)
        .arg(decal.height.value)
        .arg(wording ? static_cast<int>(wording->face) : -1)
        .arg(wording ? words(wording->outline) : QString())
        .arg(wording ? words(wording->text) : words(std::get<Artwork>(decal.content).name));
}

QTransform ontoSheet(const NestedDecal& decal) {
    const OutlinePoint corner = onSheet(decal, {0, 0});
    const OutlinePoint right = onSheet(decal, {1, 0});
    const OutlinePoint down = onSheet(decal, {0, 1});
    return {right.x - corner.x, right.y - corner.y, down.x - corner.x, down.y - corner.y, corner.x, corner.y};
}

const QPainterPath& DecalShapes::of(const Decal& decal) {
    const QString likeness = likenessOf(decal);
    const auto found = m_shapes.constFind(likeness);
    return found != m_shapes.constEnd() ? found.value()
                                        : m_shapes.insert(likeness, decalShape(decal)).value();
}

} // namespace holdfast::app

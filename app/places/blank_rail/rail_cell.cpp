// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/blank_rail/rail_cell.h"

#include "app/places/blank_rail/rail_words.h"
#include "app/theme/icons.h"
#include "app/theme/measures.h"
#include "app/theme/stitch.h"
#include "app/theme/type.h"

#include <QPainter>

#include <vector>

namespace holdfast::app {

namespace {

constexpr int kAside = 8;  // from the cell's edge
constexpr int kAbove = 10; // and from its top
constexpr int kSign = 16;
constexpr int kAfterSign = 3;
constexpr int kBetween = 9;

// A sign, or none, and words.
struct Run {
    QString sign;
    Role signInk;
    QString text;
    Type type;
    Role ink;
};

qreal widthOf(const Run& run) {
    return app::widthOf(run.text, run.type) + (run.sign.isEmpty() ? 0 : kSign + kAfterSign);
}

qreal widthOf(const std::vector<Run>& runs) {
    qreal wide = 0;
    for (const Run& run : runs)
        wide += widthOf(run) + (wide > 0 ? kBetween : 0);
    return wide;
}

std::vector<Run> firstLine(const RailCount& count, std::int64_t inWash) {
    const bool isAny = count.washed > 0;
    std::vector<Run> runs{{QStringLiteral("washed"), isAny ? &Tokens::green : &Tokens::ink3,
                           QString::number(count.washed), Type::Value, isAny ? &Tokens::ink : &Tokens::ink3}};
    if (count.unwashed > 0)
        runs.push_back({QStringLiteral("unwashed"), &Tokens::ink2, QString::number(count.unwashed),
                        Type::Support, &Tokens::ink2});
    if (inWash > 0)
        runs.push_back({QStringLiteral("plus"), &Tokens::indigo, QString::number(inWash), Type::SmallStrong,
                        &Tokens::indigo});
    return runs;
}

std::vector<Run> secondLine(const RailCount& count) {
    std::vector<Run> runs;
    if (count.isShort() > 0)
        runs.push_back({QStringLiteral("hold"), &Tokens::madder, shortWords(count.isShort()),
                        Type::SmallStrong, &Tokens::madder});
    else if (count.reserved() > 0)
        runs.push_back({{}, &Tokens::ink2, reservedWords(count.reserved()), Type::Small, &Tokens::ink2});
    if (count.drying > 0)
        runs.push_back({QStringLiteral("wash"), &Tokens::ink2, QString::number(count.drying), Type::Small,
                        &Tokens::ink2});
    return runs;
}

void paintRuns(QPainter& painter, const QRectF& line, const std::vector<Run>& runs) {
    qreal x = line.left();
    for (const Run& run : runs) {
        if (!run.sign.isEmpty()) {
            paintIcon(painter, QRectF(x, line.center().y() - kSign / 2.0, kSign, kSign), run.sign,
                      tokens().*run.signInk);
            x += kSign + kAfterSign;
        }
        const qreal wide = app::widthOf(run.text, run.type);
        paintLine(painter, QRectF(x, line.top(), wide, line.height()), run.text, run.type, tokens().*run.ink);
        x += wide + kBetween;
    }
}

} // namespace

int cellHeight() {
    return 2 * kAbove + lineHeight(Type::Value) + lineHeight(Type::Small);
}

qreal cellWidth(const RailCount& count, std::int64_t inWash) {
    return 2 * kAside + std::max(widthOf(firstLine(count, inWash)), widthOf(secondLine(count)));
}

void paintCell(QPainter& painter, const QRectF& box, const RailCount& count, std::int64_t inWash,
               bool isCurrent) {
    const Tokens& dyes = tokens();
    const bool isShort = count.isShort() > 0;
    if (isShort)
        painter.fillRect(box.adjusted(1, 0, 0, -1), dyes.madderTint);
    else if (isCurrent)
        painter.fillRect(box.adjusted(1, 0, 0, -1), dyes.woad);
    if (count.all() == 0 && !isShort) {
        paintLine(painter, box, noneWords(), Type::Small, dyes.ink3, Qt::AlignHCenter);
        return;
    }
    const QRectF inside = box.adjusted(kAside, kAbove, -kAside, -kAbove);
    const QRectF first(inside.left(), inside.top(), inside.width(), lineHeight(Type::Value));
    paintRuns(painter, first, firstLine(count, inWash));
    paintRuns(painter, QRectF(inside.left(), first.bottom(), inside.width(), lineHeight(Type::Small)),
              secondLine(count));
}

} // namespace holdfast::app

// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/cutting_bench/share_bar.h"

#include "app/theme/drawings.h"
#include "app/theme/measures.h"
#include "app/theme/stitch.h"
#include "app/theme/tokens.h"
#include "app/theme/type.h"

#include "core/cutting/percent_shares.h"

#include <QPainter>
#include <QPainterPath>

#include <algorithm>
#include <array>

namespace holdfast::app {

namespace {

constexpr double kBar = 16;
constexpr double kRound = 6;

} // namespace

ShareBar::ShareBar(QWidget* parent)
    : QWidget(parent) {
    setObjectName(QStringLiteral("shareBar"));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

void ShareBar::set(const FilmShares& shares, const QColor& film) {
    m_shares = shares;
    m_film = film;
    setAccessibleName(words());
    update();
}

QString ShareBar::words() const {
    const PercentShares whole = inPercent(m_shares);
    return tr("%1 % decals and frames, %2 % offcuts, %3 % lost in this cut")
        .arg(whole.decals)
        .arg(whole.offcuts)
        .arg(whole.lost);
}

void ShareBar::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Tokens& dyes = tokens();
    const QRectF bar(0, 0, width(), kBar);
    paintBox(painter, bar, kRound, dyes.sunk, {});
    QPainterPath clip;
    clip.addRoundedRect(bar, kRound, kRound);
    painter.save();
    painter.setClipPath(clip);
    const double decals = bar.width() * std::clamp(m_shares.decals, 0.0, 1.0);
    const double offcuts = bar.width() * std::clamp(m_shares.offcuts, 0.0, 1.0);
    painter.fillRect(QRectF(0, 0, decals, kBar), m_film);
    QPainterPath kept;
    kept.addRect(QRectF(decals, 0, offcuts, kBar));
    painter.fillPath(kept, dyes.card);
    paintHatch(painter, kept, m_film.lightnessF() > 0.8F ? outlineOf(m_film) : m_film);
    painter.restore();
    paintOutline(painter, bar, kRound, outlineOf(m_film), 1);

    const PercentShares whole = inPercent(m_shares);
    const std::array<std::pair<int, QString>, 3> said{
        {{whole.decals, tr("decals and frames")}, {whole.offcuts, tr("offcuts")}, {whole.lost, tr("lost")}}};
    // Strong numbers, plain words; the three are apart as far as there is room.
    double wide = 0;
    for (const auto& [share, text] : said)
        wide += widthOf(tr("%1 %").arg(share), Type::SmallStrong) + 4 + widthOf(text, Type::Small);
    const double apart = std::clamp((width() - wide) / 2, 6.0, 40.0);
    // What is too long for one line is shortened at its longest words; what is read aloud has all of them.
    const double tooLong = std::max(0.0, wide + 2 * apart - width());
    double x = 0;
    for (const auto& [share, text] : said) {
        x = paintRun(painter, {x, kBar + 18}, tr("%1 %").arg(share), Type::SmallStrong, dyes.ink) + 4;
        const bool isLongest = &text == &said.front().second;
        const QString shown =
            isLongest ? fitted(text, Type::Small, widthOf(text, Type::Small) - tooLong) : text;
        x = paintRun(painter, {x, kBar + 18}, shown, Type::Small, dyes.ink2) + apart;
    }
}

} // namespace holdfast::app

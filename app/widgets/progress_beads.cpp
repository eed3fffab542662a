// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/widgets/progress_beads.h"

#include "app/theme/stitch.h"
#include "app/theme/tokens.h"
#include "app/theme/type.h"

#include <QPainter>

#include <algorithm>
#include <cmath>

namespace holdfast::app {

namespace {

constexpr int kMostBeads = 30;
constexpr int kBead = 6;
constexpr int kBeadPitch = 8;
constexpr int kBeadHeight = 8;
constexpr int kBarWidth = 140;
constexpr int kBesideWords = 16;

} // namespace

ProgressBeads::ProgressBeads(QWidget* parent)
    : QWidget(parent) {
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
}

void ProgressBeads::set(int done, int total, const QString& words) {
    m_total = std::max(0, total);
    m_done = std::clamp(done, 0, m_total);
    m_words = words;
    setAccessibleName(words);
    updateGeometry();
    update();
}

int ProgressBeads::wordsWidth() const {
    return static_cast<int>(std::ceil(widthOf(m_words, Type::SupportStrong)));
}

QSize ProgressBeads::sizeHint() const {
    const int beads = m_total > kMostBeads ? kBarWidth : m_total * kBeadPitch;
    return {wordsWidth() + (m_total > 0 ? kBesideWords + beads : 0), lineHeight(Type::BodyStrong)};
}

void ProgressBeads::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const Tokens& dyes = tokens();
    const QRectF box(rect());
    paintLine(painter, box, m_words, Type::SupportStrong, dyes.ink);
    if (width() < sizeHint().width())
        return;
    qreal x = wordsWidth() + kBesideWords;
    const qreal top = box.center().y() - kBeadHeight / 2.0;
    if (m_total > kMostBeads) {
        const QRectF bar(x, top, kBarWidth, kBeadHeight);
        paintBox(painter, bar, kBeadHeight / 2.0, dyes.thread, {});
        const qreal filled = kBarWidth * static_cast<qreal>(m_done) / m_total;
        if (filled > 0) {
            paintBox(painter, QRectF(x, top, std::max<qreal>(filled, kBeadHeight), kBeadHeight),
                     kBeadHeight / 2.0, dyes.indigo, {});
        }
        return;
    }
    for (int at = 0; at < m_total; ++at) {
        paintBox(painter, QRectF(x, top, kBead, kBeadHeight), kBead / 2.0,
                 at < m_done ? dyes.indigo : dyes.thread, {});
        x += kBeadPitch;
    }
}

} // namespace holdfast::app

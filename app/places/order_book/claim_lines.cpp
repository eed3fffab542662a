// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/order_book/claim_lines.h"

#include "app/desk/formats.h"
#include "app/theme/icons.h"
#include "app/theme/measures.h"
#include "app/theme/text_runs.h"
#include "app/theme/type.h"

#include <QFontMetrics>
#include <QResizeEvent>

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr int kAnswerRoom = 128;
constexpr int kClaimPad = 10;
constexpr qreal kWordsAt = 42;

QString faultAndWashes(const Claim& claim) {
    const QString fault = words(faultWords(claim.fault));
    if (!claim.washes)
        return fault;
    if (*claim.washes == 0)
        return ClaimLines::tr("%1, not washed yet").arg(fault);
    return ClaimLines::tr("%1 after %n wash|%1 after %n washes", nullptr, howMany(*claim.washes)).arg(fault);
}

QString whatWords(const ShopFacts& facts, const Claim& claim) {
    const Garment* garment = facts.garments.find(claim.garment);
    if (!garment)
        return {};
    QString named = words(facts.labelOf(*garment));
    const auto decal = std::ranges::find_if(
        garment->decals, [&](const Decal& each) { return claim.decal && each.id == *claim.decal; });
    if (decal != garment->decals.end())
        named = ClaimLines::tr("%1, %2").arg(named, words(decal->describe()));
    return ClaimLines::tr("%1: %2").arg(named, faultAndWashes(claim));
}

} // namespace

ClaimLines::ClaimLines(QWidget* parent)
    : PaintedLines(QStringLiteral("claimLines"), tr("What came back"), parent) {}

void ClaimLines::show(const OrderView& view) {
    m_lines.clear();
    for (auto claim = view.claims.rbegin(); claim != view.claims.rend(); ++claim) {
        QString told = tr("reported %1").arg(dayNear(claim->toldOn, view.shop->now.today()));
        if (!claim->note.empty())
            told = tr("%1 · %2").arg(told, words(claim->note).simplified());
        QString answer;
        if (claim->answer)
            answer = tr("%1, %2").arg(words(answerWords(*claim->answer)),
                                      dayNear(*claim->answeredOn, view.shop->now.today()));
        m_lines.push_back({claim->id, whatWords(view.shop->facts, *claim), told, answer, 0});
    }
    layLines();
}

int ClaimLines::heightOf(const QString& text, bool isStrong) const {
    const int room = std::max(80, width() - static_cast<int>(kWordsAt) - kAnswerRoom);
    return QFontMetrics(fontOf(isStrong ? Type::SupportStrong : Type::Small))
        .boundingRect(0, 0, room, 2000, Qt::TextWordWrap, text)
        .height();
}

void ClaimLines::layLines() {
    for (Line& line : m_lines) {
        line.height = 2 * kClaimPad + heightOf(line.what, true) + heightOf(line.told, false);
        if (!line.answer.isEmpty())
            line.height += heightOf(line.answer, false);
    }
    linesChanged();
}

void ClaimLines::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    if (event->oldSize().width() != event->size().width())
        layLines();
}

void ClaimLines::paintOne(QPainter& painter, int index, const QRectF& box, bool isCurrent) {
    const Tokens& dyes = tokens();
    const Line& line = at(index);
    if (isCurrent)
        painter.fillRect(box, dyes.woad);
    const bool isAnswered = !line.answer.isEmpty();
    paintIcon(painter, QRectF(16, box.top() + kClaimPad, kSmallIcon, kSmallIcon),
              isAnswered ? QStringLiteral("done") : QStringLiteral("caution"),
              isAnswered ? dyes.green : dyes.weld);
    qreal top = box.top() + kClaimPad;
    const auto put = [&](const QString& text, bool isStrong, const QColor& ink) {
        const int height = heightOf(text, isStrong);
        painter.setFont(fontOf(isStrong ? Type::SupportStrong : Type::Small));
        painter.setPen(ink);
        painter.drawText(QRectF(kWordsAt, top, width() - kWordsAt - kAnswerRoom, height),
                         Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap, withRunsApart(text));
        top += height;
    };
    put(line.what, true, dyes.ink);
    put(line.told, false, dyes.ink2);
    if (isAnswered)
        put(line.answer, false, dyes.green);
    const QString act = isAnswered ? tr("Change the answer") : tr("Note what was done");
    paintLine(painter, QRectF(0, box.top() + kClaimPad, width() - kCardPadding, lineHeight(Type::Small)), act,
              Type::SmallStrong, dyes.indigo, Qt::AlignRight);
    painter.fillRect(QRectF(kCardPadding, box.bottom() - 1, width() - 2 * kCardPadding, 1), dyes.thread);
}

bool ClaimLines::isOnButton(int, const QRectF& box, const QPointF& where) const {
    return where.x() > box.right() - kAnswerRoom;
}

void ClaimLines::doWhatItOffers(int line) {
    emit answerAsked(at(line).claim);
}

QString ClaimLines::spokenLine(int line) const {
    const Line& spoken = at(line);
    return QStringList{spoken.what, spoken.told,
                       spoken.answer.isEmpty() ? tr("nothing was done yet") : spoken.answer}
        .join(QStringLiteral(", "));
}

} // namespace holdfast::app

#include "app/places/fair_table/promise_block.h"

#include "app/desk/formats.h"
#include "app/theme/icons.h"
#include "app/theme/measures.h"
#include "app/theme/stitch.h"
#include "app/theme/tokens.h"
#include "app/theme/type.h"

#include <QPainter>

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr double kPadding = 14;
constexpr double kPathHigh = 56;
constexpr double kDot = 5.5;
constexpr std::size_t kMostStops = 6;

} // namespace

PromiseBlock::PromiseBlock(QWidget* parent)
    : QWidget(parent) {
    setObjectName(QStringLiteral("promise"));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
}

void PromiseBlock::show(const std::optional<Promise>& promise, LocalDate today, const QString& stillOpen,
                        const QString& lack) {
    m_stops.clear();
    m_lack = lack;
    m_day.clear();
    m_hour.clear();
    m_open = stillOpen;
    if (promise) {
        const LocalDate ready = dateOf(promise->readyAt);
        m_day = ready == today ? tr("Ready today") : tr("Ready %1").arg(day(ready));
        m_hour = tr("after %1").arg(clock(promise->readyAt));
        for (const PromiseStep& step : promise->path)
            m_stops.push_back({words(step.words), words(step.when), step.stage == PromiseStage::Ready,
                               step.stage == PromiseStage::Cut});
    }
    // Seven stops have no room for their words; that it is cut goes without saying before the press.
    if (m_stops.size() > kMostStops)
        std::erase_if(m_stops, [](const Stop& stop) { return stop.isCut; });
    QStringList told{m_day, m_hour, m_open, m_lack};
    for (const Stop& stop : m_stops)
        told.append(stop.what + u' ' + stop.when);
    told.removeAll(QString());
    setAccessibleName(told.join(QStringLiteral(", ")));
    updateGeometry();
    update();
}

void PromiseBlock::setLow(bool isLow) {
    m_isLow = isLow;
    updateGeometry();
    update();
}

QSize PromiseBlock::sizeHint() const {
    return {300, m_isLow ? 98 : 130};
}

void PromiseBlock::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Tokens& dyes = tokens();
    const QRectF box(rect());
    if (m_day.isEmpty()) {
        paintBox(painter, box, kButtonRadius, {}, dyes.thread, 1.2, true);
        painter.setFont(fontOf(Type::Support));
        painter.setPen(dyes.ink2);
        painter.drawText(box.adjusted(kPadding, kPadding, -kPadding, -kPadding),
                         Qt::TextWordWrap | Qt::AlignHCenter | Qt::AlignVCenter, m_lack);
        return;
    }
    paintBox(painter, box, kButtonRadius, dyes.greenTint, {});
    paintIcon(painter, QRectF(kPadding - 2, 12, 24, 24), QStringLiteral("ready"), dyes.green);
    const double left = kPadding + 30;
    if (m_isLow) {
        paintLine(painter, QRectF(left, 10, box.width() - left, 26), m_day, Type::Value, dyes.ink);
        const double behind = left + widthOf(m_day, Type::Value) + kSpace8;
        paintLine(painter, QRectF(behind, 11, box.width() - behind, 26), m_hour, Type::Support, dyes.ink);
        paintPath(painter, 48);
    } else {
        paintLine(painter, QRectF(left, 9, box.width() - left, 30), m_day, Type::Number, dyes.ink);
        const QRectF second(left, 39, box.width() - left, 22);
        paintLine(painter, second, m_hour, Type::Value, dyes.ink);
        if (!m_open.isEmpty())
            paintLine(painter, second.adjusted(widthOf(m_hour, Type::Value) + kSpace8, 1, 0, 1), m_open,
                      Type::Small, dyes.ink2);
        paintPath(painter, 78);
    }
}

void PromiseBlock::paintPath(QPainter& painter, double top) const {
    if (m_stops.empty())
        return;
    const Tokens& dyes = tokens();
    const double first = kPadding + kDot;
    const double last = width() - kPadding - 22;
    const auto xOf = [&](std::size_t stop) {
        return m_stops.size() == 1 ? last
                                   : first + (last - first) * static_cast<double>(stop) /
                                                 static_cast<double>(m_stops.size() - 1);
    };
    paintRunningStitch(painter, QPointF(first, top), QPointF(last, top), dyes.green, 3);
    for (std::size_t at = 0; at < m_stops.size(); ++at) {
        const Stop& stop = m_stops[at];
        const QPointF centre(xOf(at), top);
        painter.setPen(QPen(dyes.green, 2));
        painter.setBrush(stop.isReady ? dyes.green : dyes.greenTint);
        painter.drawEllipse(centre, kDot, kDot);
        // The outer ones keep to the edges; the others stand below their dot.
        const double wide = std::max(widthOf(stop.what, Type::Small), widthOf(stop.when, Type::Small)) + 2;
        const double left =
            at == 0 ? kPadding - 1 : std::min(centre.x() - wide / 2, width() - kPadding + 6 - wide);
        paintLine(painter, QRectF(left, top + 9, wide, 18), stop.what, Type::Small, dyes.ink,
                  at == 0 ? Qt::AlignLeft : Qt::AlignHCenter);
        paintLine(painter, QRectF(left, top + 24, wide, 18), stop.when, Type::Small, dyes.ink2,
                  at == 0 ? Qt::AlignLeft : Qt::AlignHCenter);
    }
}

} // namespace holdfast::app

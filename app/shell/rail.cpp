#include "app/shell/rail.h"

#include "app/desk/formats.h"
#include "app/theme/drawings.h"
#include "app/theme/icons.h"
#include "app/theme/measures.h"
#include "app/theme/stitch.h"
#include "app/theme/type.h"
#include "core/cutting/nest.h"

#include <QKeyEvent>
#include <QPainter>

#include <algorithm>
#include <cmath>

namespace holdfast::app {

namespace {

constexpr int kButtonHeight = 64;
constexpr int kButtonSide = 8; // between a place and the rail's edges
constexpr int kRailIcon = 24;
constexpr int kGroupGap = 13;
constexpr int kMarkTop = 12;
constexpr int kMark = 52;
constexpr int kFirstPlace = 70;
constexpr int kAirHeight = 50;
constexpr int kAirBelow = 6;
constexpr int kBadge = 18;
constexpr std::size_t kMostOnBadge = 999;

// The keyboard's ring on the rail is of the rail's own ink: indigo would not be seen there.
void paintRailFocus(QPainter& painter, const QRectF& box) {
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(tokens().railInk, kFocusWidth));
    const qreal in = kFocusWidth / 2.0;
    painter.drawRoundedRect(box.adjusted(in, in, -in, -in), kButtonRadius, kButtonRadius);
}

std::size_t rollsToSee(const ReckonedShop& shop) {
    return static_cast<std::size_t>(std::ranges::count_if(shop.facts.rolls, [&](const FilmRoll& roll) {
        const RollCondition* condition = shop.conditions.find(roll.id);
        return roll.state == RollState::OnShelf && condition != nullptr &&
               !condition->mayBeUsed(shop.facts.films.at(roll.film), shop.now.today());
    }));
}

} // namespace

// ── a place ───────────────────────────────────────────────────────────────────────────────────────────

RailButton::RailButton(const BuiltPlace& place, QWidget* parent)
    : QAbstractButton(parent)
    , m_place(place) {
    setObjectName(QStringLiteral("rail-%1").arg(QLatin1String(place.code)));
    setText(place.words());
    setAccessibleName(place.words());
    setToolTip(keyCapText(place.keys()));
    setCheckable(true);
    setAutoExclusive(true);
    setFocusPolicy(Qt::TabFocus);
    setCursor(Qt::PointingHandCursor);
}

void RailButton::setCount(std::size_t count, const QString& words) {
    setAccessibleDescription(words);
    if (m_count == count)
        return;
    m_count = count;
    update();
}

QSize RailButton::sizeHint() const {
    return {kRailWidth - 2 * kButtonSide, kButtonHeight};
}

void RailButton::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const Tokens& dyes = tokens();
    const QRectF box(rect());
    if (isChecked()) {
        paintBox(painter, box, kButtonRadius, dyes.ground, {});
        paintSewnLabel(painter, box, dyes.indigoDeep, kButtonRadius);
    } else if (underMouse() || isDown()) {
        paintBox(painter, box, kButtonRadius, blended(dyes.rail, dyes.railThread, 0.3), {});
    }
    const QColor ink = isChecked() ? dyes.ink : dyes.railInk;
    const QRectF icon((width() - kRailIcon) / 2.0, 10, kRailIcon, kRailIcon);
    paintIcon(painter, icon, m_place.icon(), ink);
    // A longer word in another language stays whole in the smaller width of its letters.
    const QRectF words(0, 36, width(), lineHeight(Type::SmallStrong));
    paintLine(painter, words, text(), isChecked() ? Type::SmallStrong : Type::Small, ink, Qt::AlignHCenter);
    if (m_count > 0)
        paintBadge(painter, icon);
    if (hasFocus())
        paintRailFocus(painter, box);
}

void RailButton::paintBadge(QPainter& painter, const QRectF& icon) const {
    const Tokens& dyes = tokens();
    const QString count = m_count > kMostOnBadge ? QStringLiteral("999+") : QString::number(m_count);
    const qreal wide = std::max<qreal>(kBadge, std::ceil(widthOf(count, Type::SmallStrong)) + 8);
    // Beside the icon's upper right corner, never over the edge of the label.
    const qreal left = std::min(icon.right() - 4, width() - wide - 6);
    const QRectF badge(left, 4, wide, kBadge);
    paintBox(painter, badge, kBadge / 2.0, isChecked() ? dyes.indigo : dyes.railInk, {});
    paintLine(painter, badge, count, Type::SmallStrong, isChecked() ? dyes.onIndigo : dyes.rail,
              Qt::AlignHCenter);
}

void RailButton::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) {
        click();
        return;
    }
    QAbstractButton::keyPressEvent(event);
}

// ── the air ───────────────────────────────────────────────────────────────────────────────────────────

RailAir::RailAir(QWidget* parent)
    : QAbstractButton(parent) {
    setObjectName(QStringLiteral("rail-air"));
    setFocusPolicy(Qt::TabFocus);
    setCursor(Qt::PointingHandCursor);
    hide();
}

void RailAir::set(const QString& place, const QString& reading, bool isOld, const QString& inFull) {
    setVisible(!place.isEmpty());
    m_reading = reading;
    m_isOld = isOld;
    setText(inFull);
    setAccessibleName(inFull);
    setToolTip(inFull);
    update();
}

QSize RailAir::sizeHint() const {
    return {kRailWidth - 4, kAirHeight};
}

void RailAir::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const Tokens& dyes = tokens();
    const QRectF box(rect());
    if (underMouse() || isDown())
        paintBox(painter, box, kButtonRadius, blended(dyes.rail, dyes.railThread, 0.3), {});
    const QRectF icon((width() - kIcon) / 2.0, 4, kIcon, kIcon);
    // A reading too old to go by is marked by a sign and by its words, not by colour.
    paintIcon(painter, icon, m_isOld ? QStringLiteral("caution") : QStringLiteral("humidity"), dyes.railInk);
    paintLine(painter, {0, 25, box.width(), 20}, m_reading, Type::Small, dyes.railInk, Qt::AlignHCenter);
    if (hasFocus())
        paintRailFocus(painter, box);
}

// ── the rail ──────────────────────────────────────────────────────────────────────────────────────────

Rail::Rail(QWidget* parent)
    : QWidget(parent) {
    setObjectName(QStringLiteral("rail"));
    setAccessibleName(tr("Places of the workshop"));
    setFixedWidth(kRailWidth);
    for (const BuiltPlace& place : builtPlaces()) {
        auto* button = new RailButton(place, this);
        connect(button, &QAbstractButton::clicked, this,
                [this, button] { emit placeChosen(button->place()); });
        m_places.append(button);
    }
    m_air = new RailAir(this);
    connect(m_air, &QAbstractButton::clicked, this, [this] { emit airChosen(m_airOf); });
}

QSize Rail::sizeHint() const {
    return {kRailWidth, kFirstPlace};
}

RailButton* Rail::button(PlaceName place) const {
    const auto found =
        std::ranges::find_if(m_places, [&](RailButton* each) { return each->place() == place; });
    return found == m_places.end() ? nullptr : *found;
}

void Rail::setCurrent(PlaceName place) {
    if (RailButton* found = button(place))
        found->setChecked(true);
}

void Rail::show(ShopDesk& desk) {
    const ReckonedShop& shop = *desk.shop();
    if (RailButton* walk = button(PlaceName::PressWalk)) {
        const std::size_t waiting = desk.walk().total - desk.walk().pressed;
        walk->setCount(waiting, waiting == 0   ? QString()
                                : waiting == 1 ? tr("1 garment to press")
                                               : tr("%1 garments to press").arg(waiting));
    }
    if (RailButton* shelf = button(PlaceName::FilmShelf)) {
        const std::size_t rolls = rollsToSee(shop);
        shelf->setCount(rolls, rolls == 0   ? QString()
                               : rolls == 1 ? tr("1 roll past or outside its limits")
                                            : tr("%1 rolls past or outside their limits").arg(rolls));
    }
    if (RailButton* mat = button(PlaceName::CuttingMat)) {
        const std::size_t decals = decalsToCut(shop);
        mat->setCount(decals, decals == 0   ? QString()
                              : decals == 1 ? tr("1 decal to cut")
                                            : tr("%1 decals to cut").arg(decals));
    }
    showAir(shop);
}

void Rail::showAir(const ReckonedShop& shop) {
    if (shop.facts.places.empty()) {
        m_air->set({}, {}, false, {});
        return;
    }
    const StoragePlace& place = *shop.facts.places.begin();
    const QString name = words(place.name);
    m_airOf = place.id;
    const auto series = shop.climate.find(place.id);
    if (series == shop.climate.end() || series->second->empty()) {
        m_air->set(name, tr("no reading"), true, tr("%1: no reading yet. Record one.").arg(name));
        return;
    }
    const ClimateReading& last = series->second->back();
    const LocalTime at = shop.now.toLocal(last.at);
    const bool isOld = shop.now.instant - last.at > shop.facts.settings.readingsGoStaleAfter;
    const QString reading =
        tr("%1 · %2").arg(humidity(last.humidity), celsius({std::round(last.temperature.value)}));
    m_air->set(name, reading, isOld,
               tr("%1: %2, read %3 at %4. Record a reading.")
                   .arg(name, reading, dayNear(dateOf(at), shop.now.today()), clock(at)));
}

void Rail::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    m_stitches.clear();
    int y = kFirstPlace;
    const RailButton* last = nullptr;
    for (RailButton* button : m_places) {
        if (last != nullptr && builtPlace(button->place())->group != builtPlace(last->place())->group) {
            m_stitches.append(y + kGroupGap / 2);
            y += kGroupGap;
        }
        button->setGeometry(kButtonSide, y, kRailWidth - 2 * kButtonSide, kButtonHeight);
        y += kButtonHeight;
        last = button;
    }
    m_air->setGeometry(2, height() - kAirHeight - kAirBelow, kRailWidth - 4, kAirHeight);
}

void Rail::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const Tokens& dyes = tokens();
    painter.fillRect(rect(), dyes.rail);
    paintMark(painter, QRectF((kRailWidth - kMark) / 2.0, kMarkTop, kMark, kMark), dyes.railInk);
    for (const int y : m_stitches)
        paintRunningStitch(painter, {18, y + 0.5}, {kRailWidth - 18.0, y + 0.5}, dyes.railThread, 2);
}

} // namespace holdfast::app

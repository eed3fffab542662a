// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/rail.h"

#include "app/desk/formats.h"
#include "app/theme/drawings.h"
#include "app/theme/icons.h"
#include "app/theme/measures.h"
#include "app/theme/stitch.h"
#include "app/theme/type.h"
#include "core/shop/films_to_cut.h"

#include <QKeyEvent>
#include <QPainter>

#include <algorithm>
#include <cmath>

namespace holdfast::app {

namespace {

constexpr int kTallButton = 66; // icon, name and what waits
constexpr int kLowButton = 40;  // name and what waits
constexpr int kLeastButton = 30;
constexpr int kButtonSide = 8; // between a place and the rail's edges
constexpr int kRailIcon = 22;
constexpr int kGroupGap = 13;
constexpr int kMarkTop = 12;
constexpr int kMark = 52;
constexpr int kFirstPlace = 70;
constexpr int kAboveAll = 6; // where there is no room for the mark
constexpr int kAirHeight = 50;
constexpr int kAirBelow = 6;

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

// A longer name stays whole, in narrower letters, clear of the seam of its label.
void paintWhole(QPainter& painter, const QRectF& box, const QString& text, Type type, const QColor& ink) {
    const qreal room = box.width() - 2 * kSpace4;
    const qreal wide = widthOf(text, type);
    if (wide <= room) {
        paintLine(painter, box, text, type, ink, Qt::AlignHCenter);
        return;
    }
    painter.save();
    painter.translate(box.center().x(), 0);
    painter.scale(room / wide, 1);
    paintLine(painter, {-wide / 2, box.top(), wide, box.height()}, text, type, ink, Qt::AlignHCenter);
    painter.restore();
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

void RailButton::setWaiting(const QString& brief, const QString& inFull) {
    setAccessibleDescription(inFull);
    setToolTip(inFull.isEmpty() ? keyCapText(m_place.keys())
                                : QStringLiteral("%1, %2").arg(keyCapText(m_place.keys()), inFull));
    m_waiting = brief;
    update();
}

QSize RailButton::sizeHint() const {
    return {kRailWidth - 2 * kButtonSide, kTallButton};
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
    const qreal line = lineHeight(Type::Small);
    const bool hasIcon = height() >= kTallButton;
    const bool hasWaiting = !m_waiting.isEmpty() && height() >= kLowButton;
    const qreal icon = hasIcon ? kRailIcon + 2 : 0;
    qreal y = std::round((height() - icon - line - (hasWaiting ? line - 2 : 0)) / 2);
    if (hasIcon)
        paintIcon(painter, {(width() - kRailIcon) / 2.0, y, kRailIcon, kRailIcon}, m_place.icon(), ink);
    y += icon;
    const QRectF words(0, y, box.width(), line);
    paintWhole(painter, words, text(), isChecked() ? Type::SmallStrong : Type::Small, ink);
    if (hasWaiting)
        paintWhole(painter, words.translated(0, line - 2), m_waiting, Type::SmallStrong, ink);
    if (hasFocus())
        paintRailFocus(painter, box);
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
    const auto wait = [this](PlaceName place, int count, const QString& brief, const QString& whole) {
        if (RailButton* found = button(place); found != nullptr && count == 0)
            found->setWaiting({}, {});
        else if (found != nullptr)
            found->setWaiting(brief, whole);
    };
    const int garments = howMany(desk.walk().total - desk.walk().pressed);
    wait(PlaceName::PressWalk, garments, tr("%n to press", nullptr, garments),
         tr("%n garment to press|%n garments to press", nullptr, garments));
    const int rolls = howMany(rollsToSee(shop));
    wait(PlaceName::FilmShelf, rolls, tr("%n to look at", nullptr, rolls),
         tr("%n roll past or outside its limits|%n rolls past or outside their limits", nullptr, rolls));
    const int decals = howMany(decalsToCut(shop));
    wait(PlaceName::CuttingBench, decals, tr("%n to cut", nullptr, decals),
         tr("%n decal to cut|%n decals to cut", nullptr, decals));
    showAir(shop);
    arrange();
}

void Rail::showAir(const ReckonedShop& shop) {
    const auto first = std::ranges::find(shop.facts.places, false, &StoragePlace::isRetired);
    if (first == shop.facts.places.end()) {
        m_air->set({}, {}, false, {});
        return;
    }
    const StoragePlace& place = *first;
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
        last.hasHumidity
            ? tr("%1 · %2").arg(humidity(last.humidity), celsius({std::round(last.temperature.value)}))
            : celsius({std::round(last.temperature.value)});
    m_air->set(name, reading, isOld,
               tr("%1: %2, read %3 %4. Record a reading.")
                   .arg(name, reading, dayNear(dateOf(at), shop.now.today()), clock(at)));
}

void Rail::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    arrange();
}

// Buttons as tall as the room allows, the mark above them where they are.
void Rail::arrange() {
    const auto count = static_cast<int>(m_places.size());
    const int groups = 3;
    const int foot = m_air->isHidden() ? kAboveAll : kAirHeight + kAirBelow;
    const int room = height() - foot - (groups - 1) * kGroupGap;
    m_hasMark = kFirstPlace + count * kTallButton <= room;
    int y = m_hasMark ? kFirstPlace : kAboveAll;
    const int tall = m_hasMark ? kTallButton : std::clamp((room - y) / count, kLeastButton, kTallButton);
    m_stitches.clear();
    const RailButton* last = nullptr;
    for (RailButton* button : m_places) {
        if (last != nullptr && builtPlace(button->place())->group != builtPlace(last->place())->group) {
            m_stitches.append(y + kGroupGap / 2);
            y += kGroupGap;
        }
        button->setGeometry(kButtonSide, y, kRailWidth - 2 * kButtonSide, tall);
        y += tall;
        last = button;
    }
    m_air->setGeometry(2, height() - kAirHeight - kAirBelow, kRailWidth - 4, kAirHeight);
    update();
}

void Rail::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const Tokens& dyes = tokens();
    painter.fillRect(rect(), dyes.rail);
    if (m_hasMark)
        paintMark(painter, QRectF((kRailWidth - kMark) / 2.0, kMarkTop, kMark, kMark), dyes.railInk);
    for (const int y : m_stitches)
        paintRunningStitch(painter, {18, y + 0.5}, {kRailWidth - 18.0, y + 0.5}, dyes.railThread, 2);
}

} // namespace holdfast::app

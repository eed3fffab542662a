// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/theme/tokens.h"

#include "app/theme/finger_scroll.h"
#include "app/theme/focus_ring.h"
#include "app/theme/style.h"
#include "app/theme/type.h"

#include <QApplication>
#include <QEvent>
#include <QPalette>
#include <QPixmapCache>
#include <QToolTip>
#include <QWidget>

#include <algorithm>

namespace holdfast::app {

namespace {

// Room for every garment, decal and icon that a full Press walk and Order book show at two pixels to one.
constexpr int kPictureCacheKilobytes = 32 * 1024;

Light g_light = Light::Day;

QColor dye(QRgb hex) {
    return QColor::fromRgb(hex);
}

Tokens dayTokens() {
    Tokens day;
    day.ground = dye(0xEFE8DA);
    day.card = dye(0xFBF8F1);
    day.sunk = dye(0xE5DCCA);
    day.thread = dye(0xD3C7B1);
    day.edge = dye(0x877861);
    day.ink = dye(0x2A2019);
    day.ink2 = dye(0x57493C);
    day.ink3 = dye(0x6A5B4B);
    day.indigo = dye(0x2B4A7E);
    day.indigoDeep = dye(0x1F3860);
    day.onIndigo = dye(0xFBF8F1);
    day.woad = dye(0xDCE5EE);
    day.madder = dye(0x97352A);
    day.madderTint = dye(0xF5DFD8);
    day.weld = dye(0x715400);
    day.weldTint = dye(0xF6E7B4);
    day.weldHatch = dye(0xD6A92C);
    day.green = dye(0x37633F);
    day.greenTint = dye(0xDEE9D8);
    day.rail = dye(0x22375C);
    day.railInk = dye(0xE6E1D4);
    day.railThread = dye(0x6F86AE);
    day.board = dye(0xC9B593);
    day.boardEdge = dye(0xA98F68);
    day.bench = dye(0xE0D3BA);
    day.benchLine = dye(0x8C7650);
    return day;
}

Tokens eveningTokens() {
    Tokens evening;
    evening.ground = dye(0x1B1613);
    evening.card = dye(0x28211B);
    evening.sunk = dye(0x14100D);
    evening.thread = dye(0x43382E);
    evening.edge = dye(0x94836C);
    evening.ink = dye(0xF4EBDC);
    evening.ink2 = dye(0xCDBFAA);
    evening.ink3 = dye(0xB0A18B);
    evening.indigo = dye(0x9DBBE8);
    evening.indigoDeep = dye(0xC1D5F4);
    evening.onIndigo = dye(0x14202F);
    evening.woad = dye(0x27364C);
    evening.madder = dye(0xF2A593);
    evening.madderTint = dye(0x4A2620);
    evening.weld = dye(0xEBCB6B);
    evening.weldTint = dye(0x41351A);
    evening.weldHatch = dye(0xD6A92C);
    evening.green = dye(0xA3CE9E);
    evening.greenTint = dye(0x26382A);
    evening.rail = dye(0x141C2B);
    evening.railInk = dye(0xDAD6CB);
    evening.railThread = dye(0x5B7197);
    evening.board = dye(0x4A3B2A);
    evening.boardEdge = dye(0x6B563C);
    evening.bench = dye(0x332A20);
    evening.benchLine = dye(0x7A6750);
    return evening;
}

QPalette paletteFrom(const Tokens& dyes) {
    QPalette palette;
    palette.setColor(QPalette::Window, dyes.ground);
    palette.setColor(QPalette::WindowText, dyes.ink);
    palette.setColor(QPalette::Base, dyes.card);
    palette.setColor(QPalette::AlternateBase, dyes.sunk);
    palette.setColor(QPalette::Text, dyes.ink);
    palette.setColor(QPalette::PlaceholderText, dyes.ink3);
    palette.setColor(QPalette::Button, dyes.card);
    palette.setColor(QPalette::ButtonText, dyes.ink);
    palette.setColor(QPalette::BrightText, dyes.onIndigo);
    palette.setColor(QPalette::Highlight, dyes.woad);
    palette.setColor(QPalette::HighlightedText, dyes.ink);
    palette.setColor(QPalette::ToolTipBase, dyes.ink);
    palette.setColor(QPalette::ToolTipText, dyes.card);
    palette.setColor(QPalette::Link, dyes.indigo);
    palette.setColor(QPalette::LinkVisited, dyes.indigo);
    palette.setColor(QPalette::Light, dyes.card);
    palette.setColor(QPalette::Midlight, dyes.sunk);
    palette.setColor(QPalette::Mid, dyes.thread);
    palette.setColor(QPalette::Dark, dyes.edge);
    palette.setColor(QPalette::Shadow, dyes.ink3);
    for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText}) {
        palette.setColor(QPalette::Disabled, role, dyes.ink3);
    }
    return palette;
}

} // namespace

const Tokens& tokens(Light wanted) {
    static const Tokens day = dayTokens();
    static const Tokens evening = eveningTokens();
    return wanted == Light::Day ? day : evening;
}

const Tokens& tokens() {
    return tokens(g_light);
}

Light light() {
    return g_light;
}

void setLight(QApplication& application, Light wanted) {
    g_light = wanted;
    QPixmapCache::setCacheLimit(std::max(QPixmapCache::cacheLimit(), kPictureCacheKilobytes));
    static bool isDressed = false;
    if (!isDressed) {
        isDressed = true;
        application.setStyle(new WorkshopStyle); // the application owns it
        application.setFont(fontOf(Type::Body));
        FocusRing::install();
        FingerScroll::install();
    }
    const QPalette palette = paletteFrom(tokens());
    application.setPalette(palette);
    QToolTip::setPalette(palette);
    QToolTip::setFont(fontOf(Type::Support));
    // Widgets with a palette of their own miss the application's change: each one is notified, and painted
    // again.
    for (QWidget* widget : QApplication::allWidgets()) {
        QEvent change(QEvent::PaletteChange);
        QCoreApplication::sendEvent(widget, &change);
        widget->update();
    }
}

Role toneRole(Tone tone) {
    switch (tone) {
    case Tone::Plain:
        return &Tokens::ink2;
    case Tone::Working:
        return &Tokens::indigo;
    case Tone::Held:
        return &Tokens::madder;
    case Tone::Caution:
        return &Tokens::weld;
    case Tone::Ready:
        return &Tokens::green;
    }
    return &Tokens::ink2;
}

QColor toneInk(Tone tone) {
    return tokens().*toneRole(tone);
}

QColor toneGround(Tone tone) {
    switch (tone) {
    case Tone::Plain:
        return tokens().sunk;
    case Tone::Working:
        return tokens().woad;
    case Tone::Held:
        return tokens().madderTint;
    case Tone::Caution:
        return tokens().weldTint;
    case Tone::Ready:
        return tokens().greenTint;
    }
    return tokens().sunk;
}

QColor blended(const QColor& colour, const QColor& towards, double share) {
    const auto mix = [share](float from, float to) {
        return static_cast<float>(from + (to - from) * static_cast<float>(share));
    };
    return QColor::fromRgbF(mix(colour.redF(), towards.redF()), mix(colour.greenF(), towards.greenF()),
                            mix(colour.blueF(), towards.blueF()));
}

} // namespace holdfast::app

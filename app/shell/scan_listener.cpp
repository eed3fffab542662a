// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/scan_listener.h"

#include <QApplication>
#include <QScopedValueRollback>
#include <QWidget>
#include <QWindow>

#include <algorithm>
#include <chrono>
#include <utility>

// Delivers a key to a window just as the platform does, shortcuts first. Qt exports it for its own test
// module, which declares it in the same way (qtestkey.h).
QT_BEGIN_NAMESPACE
Q_GUI_EXPORT void qt_handleKeyEvent(QWindow* window, QEvent::Type t, int k, Qt::KeyboardModifiers mods,
                                    const QString& text = QString(), bool autorep = false, ushort count = 1);
QT_END_NAMESPACE

namespace holdfast::app {

namespace {

using namespace std::chrono_literals;

constexpr std::chrono::milliseconds kBehindPrefix = 150ms;
constexpr qsizetype kShortestCode = 3;
constexpr qsizetype kLongestCode = 60;

bool isEnter(const QKeyEvent& key) {
    return key.key() == Qt::Key_Return || key.key() == Qt::Key_Enter;
}

bool isModifier(const QKeyEvent& key) {
    return key.key() == Qt::Key_Shift || key.key() == Qt::Key_Control || key.key() == Qt::Key_Alt ||
           key.key() == Qt::Key_Meta || key.key() == Qt::Key_AltGr || key.key() == Qt::Key_CapsLock;
}

// A sign that a scanner may type; a held-down key repeats and is a person's.
bool isOfCode(const QKeyEvent& key) {
    constexpr Qt::KeyboardModifiers kActs = Qt::ControlModifier | Qt::AltModifier | Qt::MetaModifier;
    const QString text = key.text();
    return text.size() == 1 && text.front() > QLatin1Char(' ') && text.front().isPrint() &&
           !key.isAutoRepeat() && (key.modifiers() & kActs) == Qt::NoModifier;
}

} // namespace

ScanListener::ScanListener(QWidget* window)
    : QObject(window)
    , m_window(window) {
    m_wait.setSingleShot(true);
    m_wait.setTimerType(Qt::PreciseTimer);
    connect(&m_wait, &QTimer::timeout, this, [this] {
        // Keys that came while the window was busy are delivered before it is decided that none came.
        QTimer::singleShot(0, this, [this] {
            if (!m_wait.isActive())
                passOnHeldKeys();
        });
    });
    qApp->installEventFilter(this);
}

ScanListener::~ScanListener() {
    qApp->removeEventFilter(this);
}

bool ScanListener::eventFilter(QObject* watched, QEvent* event) {
    if (m_isLettingGo || !m_window->isVisible() || watched != m_window->window()->windowHandle())
        return QObject::eventFilter(watched, event);
    switch (event->type()) {
    case QEvent::ShortcutOverride:
        return takeOverride(*static_cast<QKeyEvent*>(event));
    case QEvent::KeyPress:
        return takePress(*static_cast<QKeyEvent*>(event));
    case QEvent::KeyRelease:
        return takeRelease(*static_cast<QKeyEvent*>(event));
    case QEvent::MouseButtonPress:
    case QEvent::TouchBegin:
        passOnHeldKeys();
        return false;
    default:
        return false;
    }
}

// Comes before the press, and decides whether the key may act as a shortcut.
bool ScanListener::takeOverride(QKeyEvent& key) {
    if (isModifier(key))
        return false;
    const bool endsCode = isEnter(key) && isInTime(key) && isBurst();
    if (endsCode || isOfCode(key)) {
        key.accept(); // no shortcut; the press follows
        return true;
    }
    passOnHeldKeys();
    return false;
}

bool ScanListener::takePress(const QKeyEvent& key) {
    if (isModifier(key))
        return false;
    if (isEnter(key) && isInTime(key) && isBurst()) {
        m_swallowed.insert(key.key());
        finish();
        return true;
    }
    if (!isOfCode(key)) {
        passOnHeldKeys();
        return false;
    }
    if (!isInTime(key) || m_typed.size() >= kLongestCode)
        passOnHeldKeys();
    m_typed += key.text();
    m_lastAt = key.timestamp();
    m_wait.start(hasPrefix() ? std::max(kBehindPrefix, m_betweenKeys) : m_betweenKeys);
    hold(key);
    return true;
}

bool ScanListener::takeRelease(const QKeyEvent& key) {
    if (m_swallowed.remove(key.key()))
        return true;
    const bool isHeld =
        std::ranges::any_of(m_held, [&](const HeldKey& held) { return held.key == key.key(); });
    if (isHeld)
        hold(key);
    return isHeld;
}

void ScanListener::hold(const QKeyEvent& key) {
    m_held.append({key.type(), key.key(), key.modifiers(), key.text()});
}

bool ScanListener::isInTime(const QKeyEvent& key) const {
    const auto limit =
        static_cast<quint64>((hasPrefix() ? std::max(kBehindPrefix, m_betweenKeys) : m_betweenKeys).count());
    return m_held.isEmpty() || key.timestamp() - m_lastAt <= limit;
}

bool ScanListener::hasPrefix() const {
    return !m_prefix.isEmpty() && m_typed.startsWith(m_prefix);
}

bool ScanListener::isBurst() const {
    return m_typed.size() - (hasPrefix() ? m_prefix.size() : 0) >= kShortestCode;
}

void ScanListener::finish() {
    m_wait.stop();
    QSet<int> down;
    for (const HeldKey& held : std::exchange(m_held, {}))
        if (held.type == QEvent::KeyPress)
            down.insert(held.key);
        else
            down.remove(held.key);
    m_swallowed.unite(down);
    const QString typed = m_typed.mid(hasPrefix() ? m_prefix.size() : 0);
    m_typed.clear();
    emit scanned(typed);
}

void ScanListener::passOnHeldKeys() {
    m_wait.stop();
    m_typed.clear();
    const QScopedValueRollback lettingGo(m_isLettingGo, true);
    for (const HeldKey& held : std::exchange(m_held, {})) {
        qt_handleKeyEvent(m_window->window()->windowHandle(), held.type, held.key, held.modifiers, held.text);
        // What one key brings, as the sizes of a style, is there before the next is pressed.
        QCoreApplication::processEvents(QEventLoop::ExcludeUserInputEvents);
    }
}

} // namespace holdfast::app

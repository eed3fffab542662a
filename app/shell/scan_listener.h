// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Distinguishes a scanner that types like a keyboard from a person: a burst of at least three signs, each
// within 30 ms of the one before, ending in Enter. Such a burst reaches nothing else: no field, no list, no
// key of a place.
//
// Keys that may belong to a code are held back until it is clear that they do not, 30 ms at most, and then go
// on their usual way in their order. Keys of the window only: events that are sent to one widget are not
// held.

#include <QKeyEvent>
#include <QObject>
#include <QSet>
#include <QString>
#include <QTimer>
#include <QVector>

#include <chrono>

class QWidget;

namespace holdfast::app {

class ScanListener : public QObject {
    Q_OBJECT

public:
    explicit ScanListener(QWidget* window);
    ~ScanListener() override;

    // What the scanner is set to type before each code. After it the signs may come up to 150 ms apart, as a
    // wireless scanner's do. Empty: none; codes without it are taken all the same.
    void setPrefix(const QString& prefix) { m_prefix = prefix; }

    // How far apart the signs of a code may come; on a machine that is busy with other things keys that are
    // made by a program come slower than a scanner's.
    static constexpr std::chrono::milliseconds kBetweenKeys{30};
    void setBetweenKeys(std::chrono::milliseconds most) { m_betweenKeys = most; }

signals:
    void scanned(const QString& typed); // without prefix and Enter

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    struct HeldKey {
        QEvent::Type type;
        int key;
        Qt::KeyboardModifiers modifiers;
        QString text;
    };

    bool takeOverride(QKeyEvent& key);
    bool takePress(const QKeyEvent& key);
    bool takeRelease(const QKeyEvent& key);
    void hold(const QKeyEvent& key);
    bool isInTime(const QKeyEvent& key) const;
    bool isBurst() const;
    bool hasPrefix() const;
    void finish();
    void passOnHeldKeys();

    QWidget* m_window;
    QString m_prefix;
    std::chrono::milliseconds m_betweenKeys = kBetweenKeys;
    QVector<HeldKey> m_held;
    QString m_typed;
    quint64 m_lastAt = 0; // of the last key held, on the clock of the events
    QTimer m_wait;
    QSet<int> m_swallowed; // pressed as part of a code; their releases are nobody's
    bool m_isLettingGo = false;
};

} // namespace holdfast::app

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Makes the end of a count at the press known: by a sound, as loud as was chosen in the Back room; and, while
// the window is not in front, by a notice on the desktop and a mark on the window in the task bar.

#include "app/desk/knock.h"
#include "app/desk/shop_desk.h"
#include "app/shell/desktop_notice.h"
#include "app/shell/desktop_sounds.h"

#include <QObject>
#include <QString>

#include <functional>
#include <memory>
#include <optional>

class QWidget;

namespace holdfast::app {

class CountAlarm : public QObject {
    Q_OBJECT

public:
    // What it reaches the person by; made when there is first something to say.
    struct Ways {
        std::function<std::unique_ptr<SoundPlayer>()> sounds = desktopSounds;
        std::function<std::optional<QDBusConnection>()> bus = sessionBus;
    };

    // `window` is the widget whose window is brought to the front.
    CountAlarm(ShopDesk& desk, QWidget& window);

    void setWays(Ways ways);

signals:
    void rang(const QString& words); // "418-b: lift it now."
    void walkAsked();                // the person chose the notice; the window was brought to the front

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void ring(const std::vector<EndedCount>& counts);
    void knock();
    void notify(const QString& summary, bool isUrgent);
    void showWalk(const QString& activationToken);
    QString wordsOf(const EndedCount& count) const;
    SoundPlayer& sounds();

    ShopDesk& m_desk;
    QWidget& m_window;
    Ways m_ways;
    std::unique_ptr<SoundPlayer> m_sounds;
    std::unique_ptr<DesktopNotice> m_notice;
    bool m_isTried = false; // asked to be heard: its outcome is said
};

} // namespace holdfast::app

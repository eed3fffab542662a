// SPDX-License-Identifier: GPL-3.0-or-later
// The end of a count is heard, whatever place is seen; and while the window is not in front, the desktop says
// it. The desktop is one of our own: a bus that Debian's dbus-daemon runs for the test, and a small service
// on it that keeps the freedesktop.org Desktop Notifications Specification 1.2.
#include "app/desk/knock.h"
#include "app/places/back_room/back_room_place.h"
#include "app/places/back_room/room_sheet.h"
#include "app/shell/count_alarm.h"
#include "app/shell/foot_line.h"
#include "app/shell/workshop.h"
#include "db/actions/press_actions.h"
#include "tests/app/private_bus.h"
#include "tests/app/shop_fixture.h"

#include <QApplication>
#include <QDBusConnectionInterface>
#include <QElapsedTimer>
#include <QProcess>
#include <QSignalSpy>
#include <QTemporaryDir>
#include <QTest>
#include <QtEndian>

#include <cmath>
#include <csignal>

namespace holdfast::app::test {

class FakeSounds : public SoundPlayer {
    Q_OBJECT

public:
    FakeSounds(QVector<QByteArray>& heard, bool works)
        : m_heard(heard)
        , m_works(works) {}

    void play(const QByteArray& wave) override {
        m_heard.append(wave);
        if (m_works)
            emit played();
        else
            emit failed();
    }

private:
    QVector<QByteArray>& m_heard;
    bool m_works;
};

class FakeDesktop : public QObject {
    Q_OBJECT
    Q_CLASSINFO("D-Bus Interface", "org.freedesktop.Notifications")

public:
    struct Shown {
        uint number = 0;
        QString summary;
        QStringList actions;
        QVariantMap hints;
    };
    QVector<Shown> shown;
    QVector<uint> closed;

public slots:
    uint Notify(const QString&, uint replaces, const QString&, const QString& summary, const QString&,
                const QStringList& actions, const QVariantMap& hints, int) {
        const uint number = replaces != 0 ? replaces : ++m_last;
        shown.append({number, summary, actions, hints});
        return number;
    }
    void CloseNotification(uint number) { closed.append(number); }

signals:
    void ActionInvoked(uint number, const QString& action);
    void ActivationToken(uint number, const QString& token);
    void NotificationClosed(uint number, uint reason);

private:
    uint m_last = 0;
};

namespace {

constexpr int kAlarmPatience = 5000;
const QString kOurs = QStringLiteral("holdfast-under-test");
const QString kTheirs = QStringLiteral("a-desktop");

class CountAlarmTest : public ShopFixture {
protected:
    CountAlarmTest() {
        usual = stockUsualShop();
        garment = garmentsOf(takeOrder({aGarment(usual)}).id).front();
        cut(garment, usual.roll);
    }
    ~CountAlarmTest() override {
        workshop.reset();
        keepLoudness(Loudness::Loud); // it is the computer's, not the shop's
    }

    void open(PlaceName seen, bool soundWorks = true) {
        workshop = std::make_unique<Workshop>(desk());
        workshop->alarm()->setWays(
            {[this, soundWorks] { return std::make_unique<FakeSounds>(heard, soundWorks); },
             [this]() -> std::optional<QDBusConnection> {
                 return bus ? std::optional{bus->connect(kOurs)} : std::nullopt;
             }});
        showWindow(*workshop);
        workshop->turnTo(seen);
    }
    // Up to this step, by the actions alone.
    void walkTo(const std::string& step) {
        const Route route = desk().shop()->of(garment).route;
        valueOf(db::takeUp(file(), garment, route, desk().now()));
        for (std::string open; open != step;)
            open = valueOf(db::finishStep(file(), garment, route));
    }
    bool isHeard(qsizetype times) {
        return QTest::qWaitFor([&] { return heard.size() >= times; }, kAlarmPatience) &&
               heard.size() == times;
    }
    void offerDesktop() {
        bus.emplace();
        ASSERT_TRUE(bus->isThere()) << "dbus-daemon did not start";
        QDBusConnection connection = bus->connect(kTheirs);
        ASSERT_TRUE(
            connection.registerObject(QStringLiteral("/org/freedesktop/Notifications"), &desktop,
                                      QDBusConnection::ExportAllSlots | QDBusConnection::ExportAllSignals));
        ASSERT_TRUE(connection.registerService(QStringLiteral("org.freedesktop.Notifications")));
    }
    void putAnotherWindowInFront() {
        showWindow(other, {300, 200});
        ASSERT_FALSE(workshop->isActiveWindow());
    }
    QString foot() { return workshop->foot()->words(); }

    UsualShop usual;
    GarmentId garment;
    QVector<QByteArray> heard;
    FakeDesktop desktop;
    QWidget other;
    std::optional<PrivateBus> bus;
    std::unique_ptr<Workshop> workshop;
};

std::vector<int> samplesOf(const QByteArray& wave) {
    std::vector<int> samples;
    for (qsizetype at = 44; at + 1 < wave.size(); at += 2)
        samples.push_back(qFromLittleEndian<qint16>(wave.constData() + at));
    return samples;
}
int peakOf(const QByteArray& wave) {
    int peak = 0;
    for (const int sample : samplesOf(wave))
        peak = std::max(peak, std::abs(sample));
    return peak;
}

} // namespace

// The head of a sound file as "Multimedia Programming Interface and Data Specifications 1.0" (IBM and
// Microsoft, 1991) lays it down.
TEST(Knock, IsASoundFileWithoutAClickAtEitherEnd) {
    const QByteArray wave = knockWave(Loudness::Loud);
    const auto four = [&](int at) { return qFromLittleEndian<quint32>(wave.constData() + at); };
    const auto two = [&](int at) { return qFromLittleEndian<quint16>(wave.constData() + at); };
    EXPECT_EQ(wave.left(4), "RIFF");
    EXPECT_EQ(four(4), static_cast<quint32>(wave.size() - 8));
    EXPECT_EQ(wave.mid(8, 8), "WAVEfmt ");
    EXPECT_EQ(four(16), 16u);
    EXPECT_EQ(two(20), 1u) << "plain samples";
    EXPECT_EQ(two(22), 1u) << "channels";
    EXPECT_EQ(four(24), 44'100u);
    EXPECT_EQ(four(28), 88'200u);
    EXPECT_EQ(two(32), 2u);
    EXPECT_EQ(two(34), 16u);
    EXPECT_EQ(wave.mid(36, 4), "data");
    EXPECT_EQ(four(40), static_cast<quint32>(wave.size() - 44));

    const std::vector<int> samples = samplesOf(wave);
    const double seconds = static_cast<double>(samples.size()) / 44'100;
    EXPECT_GT(seconds, 0.3);
    EXPECT_LT(seconds, 1.0) << "short";
    EXPECT_LT(std::abs(samples.front()), 50);
    EXPECT_LT(std::abs(samples.back()), 50);
}

TEST(Knock, SoftIsMuchSofterThanLoudAndOffIsNothing) {
    EXPECT_GT(peakOf(knockWave(Loudness::Loud)), 28'000);
    EXPECT_LT(peakOf(knockWave(Loudness::Loud)), 32'768) << "nothing is cut off";
    // 10 dB are heard as half as loud: Stevens' sone scale, ISO 532.
    EXPECT_LT(peakOf(knockWave(Loudness::Soft)) * 3, peakOf(knockWave(Loudness::Loud)));
    EXPECT_TRUE(knockWave(Loudness::Off).isEmpty());
    EXPECT_EQ(samplesOf(knockWave(Loudness::Loud, 3)).size(),
              3 * samplesOf(knockWave(Loudness::Loud)).size());
}

TEST_F(CountAlarmTest, EndOfHeatIsHeardOnceWhateverPlaceIsSeenAndSaidThere) {
    open(PlaceName::BlankRail);
    walkTo("press-1");
    time().pass(11s);
    QTest::qWait(400);
    EXPECT_TRUE(heard.isEmpty());
    time().pass(1s);
    EXPECT_TRUE(isHeard(1));
    EXPECT_EQ(foot(), QStringLiteral("1-a: lift it now."));
    QTest::qWait(600);
    EXPECT_EQ(heard.size(), 1) << "once";
}

TEST_F(CountAlarmTest, EndOfCoolingIsHeardAndSaysWhatComesNext) {
    open(PlaceName::OrderBook);
    walkTo("cool-1");
    time().pass(40s);
    EXPECT_TRUE(isHeard(1));
    EXPECT_EQ(foot(), QStringLiteral("1-a is cool enough: peel warm."));
}

TEST_F(CountAlarmTest, TooLongUnderHeatIsHeardOnceMoreAndLonger) {
    open(PlaceName::BlankRail);
    walkTo("press-1");
    time().pass(12s);
    ASSERT_TRUE(isHeard(1));
    time().pass(30s);
    ASSERT_TRUE(isHeard(2));
    EXPECT_GT(heard[1].size(), 2 * heard[0].size());
    EXPECT_EQ(foot(), QStringLiteral("1-a has been under heat too long: lift it now."));
}

TEST_F(CountAlarmTest, HeatThatWasLeftWhileTheShopWasClosedIsHeardWhenItIsOpened) {
    walkTo("press-1");
    close();
    time().pass(20s);
    reopen();
    open(PlaceName::BlankRail);
    EXPECT_TRUE(isHeard(1));
}

TEST_F(CountAlarmTest, WhatCooledWhileTheShopWasClosedKeepsAndIsNotHeard) {
    walkTo("cool-1");
    close();
    time().pass(1h);
    reopen();
    open(PlaceName::BlankRail);
    QTest::qWait(600);
    EXPECT_TRUE(heard.isEmpty());
}

TEST_F(CountAlarmTest, StepThatIsFinishedInTimeIsNotHeard) {
    open(PlaceName::PressWalk);
    walkTo("press-1");
    valueOf(db::backAStep(file(), garment));
    time().pass(60s);
    QTest::qWait(600);
    EXPECT_TRUE(heard.isEmpty());
}

TEST_F(CountAlarmTest, LoudnessOfTheBackRoomIsKeptAndObeyed) {
    open(PlaceName::BackRoom);
    auto& room = *qobject_cast<BackRoomPlace*>(workshop->place());
    room.turnToSection(RoomSection::Computer);
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_H);
    ASSERT_EQ(heard.size(), 1);
    EXPECT_EQ(heard.back(), knockWave(Loudness::Loud)) << "loud until somebody chose otherwise";
    keepLoudness(Loudness::Soft);
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_H);
    ASSERT_EQ(heard.size(), 2);
    EXPECT_EQ(heard.back(), knockWave(Loudness::Soft));
    EXPECT_TRUE(foot().contains(QStringLiteral("The sound was played"))) << foot().toStdString();

    keepLoudness(Loudness::Off);
    walkTo("press-1");
    time().pass(12s);
    EXPECT_TRUE(
        QTest::qWaitFor([&] { return foot() == QStringLiteral("1-a: lift it now."); }, kAlarmPatience))
        << "it is still said: " << foot().toStdString();
    EXPECT_EQ(heard.size(), 2);
    EXPECT_EQ(keptLoudness(), Loudness::Off);
}

TEST_F(CountAlarmTest, WithoutASoundServiceTheButtonSaysSo) {
    open(PlaceName::BackRoom, false);
    emit desk().knockAsked();
    EXPECT_TRUE(foot().contains(QStringLiteral("no sound service"))) << foot().toStdString();
}

TEST_F(CountAlarmTest, DesktopIsToldWhileAnotherWindowIsInFrontAndAClickLeadsToTheWalk) {
    offerDesktop();
    open(PlaceName::BlankRail);
    walkTo("press-1");
    putAnotherWindowInFront();
    time().pass(12s);
    ASSERT_TRUE(QTest::qWaitFor([&] { return desktop.shown.size() == 1; }, kAlarmPatience));
    const FakeDesktop::Shown& notice = desktop.shown[0];
    EXPECT_EQ(notice.summary, QStringLiteral("1-a: lift it now."));
    EXPECT_EQ(notice.actions,
              (QStringList{QStringLiteral("default"), QStringLiteral("Show the press walk")}));
    EXPECT_EQ(notice.hints.value(QStringLiteral("urgency")).toInt(), 2) << "critical, by the specification";
    EXPECT_TRUE(notice.hints.value(QStringLiteral("suppress-sound")).toBool());

    QTest::qWait(100); // for its number to come back
    emit desktop.ActionInvoked(notice.number + 7, QStringLiteral("default"));
    QTest::qWait(100);
    EXPECT_EQ(workshop->current(), PlaceName::BlankRail) << "another program's notice";
    emit desktop.ActionInvoked(notice.number, QStringLiteral("default"));
    EXPECT_TRUE(QTest::qWaitFor([&] { return workshop->current() == PlaceName::PressWalk; }, kAlarmPatience));
    EXPECT_TRUE(QTest::qWaitFor([&] { return workshop->isActiveWindow(); }, kAlarmPatience));
    EXPECT_TRUE(QTest::qWaitFor([&] { return desktop.closed.contains(notice.number); }, kAlarmPatience))
        << "seen, it goes";
}

TEST_F(CountAlarmTest, DesktopIsNotToldWhileTheWindowIsInFront) {
    offerDesktop();
    open(PlaceName::PressWalk);
    walkTo("press-1");
    time().pass(12s);
    EXPECT_TRUE(isHeard(1));
    QTest::qWait(300);
    EXPECT_TRUE(desktop.shown.isEmpty());
}

TEST_F(CountAlarmTest, LaterNoticeTakesThePlaceOfTheOneBefore) {
    offerDesktop();
    open(PlaceName::PressWalk);
    walkTo("press-1");
    putAnotherWindowInFront();
    time().pass(12s);
    ASSERT_TRUE(QTest::qWaitFor([&] { return desktop.shown.size() == 1; }, kAlarmPatience));
    QTest::qWait(100);
    time().pass(30s);
    ASSERT_TRUE(QTest::qWaitFor([&] { return desktop.shown.size() == 2; }, kAlarmPatience));
    EXPECT_EQ(desktop.shown[1].number, desktop.shown[0].number);
    EXPECT_EQ(desktop.shown[1].summary, QStringLiteral("1-a has been under heat too long: lift it now."));
}

TEST_F(CountAlarmTest, WithoutADesktopItIsOnlyHeard) {
    bus.emplace(); // a bus with nobody on it
    ASSERT_TRUE(bus->isThere());
    open(PlaceName::PressWalk);
    walkTo("press-1");
    putAnotherWindowInFront();
    time().pass(12s);
    EXPECT_TRUE(isHeard(1));
    QTest::qWait(300);
    EXPECT_EQ(desk().shop()->of(garment).stage, Stage::OnPress);
}

// The real service, or none: neither keeps the window waiting.
TEST(DesktopSounds, AnswerWithoutKeepingTheWindowWaiting) {
    const QByteArray wave = knockWave(Loudness::Soft);
    const std::unique_ptr<SoundPlayer> sounds = desktopSounds();
    QSignalSpy played(sounds.get(), &SoundPlayer::played);
    QSignalSpy failed(sounds.get(), &SoundPlayer::failed);
    sounds->play(wave);
    EXPECT_EQ(played.size() + failed.size(), 0) << "it is answered later, not waited for";
    EXPECT_TRUE(QTest::qWaitFor([&] { return played.size() + failed.size() == 1; }, 20'000));
}

// What comes out of a real sound service, Debian's PulseAudio with a sink that nobody hears, is the knock at
// its loudness; and a service that hangs keeps neither the window nor its closing waiting.
TEST(DesktopSounds, AreHeardThroughPulseAudioAndDoNotWaitForOneThatHangs) {
    const QTemporaryDir folder;
    const QString socket = folder.filePath(QStringLiteral("socket"));
    const QByteArray before = qgetenv("PULSE_SERVER");
    qputenv("XDG_RUNTIME_DIR", folder.path().toUtf8());
    QProcess service;
    service.start(QStringLiteral("pulseaudio"),
                  {QStringLiteral("-n"), QStringLiteral("--daemonize=no"),
                   QStringLiteral("--exit-idle-time=-1"), QStringLiteral("--use-pid-file=no"),
                   QStringLiteral("-L"),
                   QStringLiteral("module-null-sink sink_name=ear rate=44100 channels=1 format=s16le"),
                   QStringLiteral("-L"),
                   QStringLiteral("module-native-protocol-unix auth-anonymous=1 socket=") + socket});
    ASSERT_TRUE(service.waitForStarted(kAlarmPatience)) << "is pulseaudio installed?";
    ASSERT_TRUE(QTest::qWaitFor([&] { return QFile::exists(socket); }, kAlarmPatience));
    qputenv("PULSE_SERVER", "unix:" + socket.toUtf8());
    QProcess ear;
    // The socket is there a little before the service answers.
    const bool hears = QTest::qWaitFor(
        [&ear] {
            if (ear.state() == QProcess::NotRunning)
                ear.start(QStringLiteral("parec"),
                          {QStringLiteral("--latency-msec=20"), QStringLiteral("-d"),
                           QStringLiteral("ear.monitor"), QStringLiteral("--format=s16le"),
                           QStringLiteral("--rate=44100"), QStringLiteral("--channels=1")});
            return ear.waitForReadyRead(200);
        },
        kAlarmPatience);
    ASSERT_TRUE(hears) << "is pulseaudio-utils installed? " << ear.readAllStandardError().toStdString();

    std::unique_ptr<SoundPlayer> sounds = desktopSounds();
    QSignalSpy played(sounds.get(), &SoundPlayer::played);
    const QByteArray wave = knockWave(Loudness::Loud);
    QByteArray heard(44, '\0'); // where a file has its head
    sounds->play(wave);
    EXPECT_TRUE(QTest::qWaitFor(
        [&] {
            heard += ear.readAll();
            return peakOf(heard) > 0.99 * peakOf(wave);
        },
        kAlarmPatience))
        << "heard at most " << peakOf(heard) << ", played " << played.size();
    EXPECT_LE(peakOf(heard), peakOf(wave) + 1);

    ::kill(static_cast<pid_t>(service.processId()), SIGSTOP);
    QElapsedTimer watch;
    watch.start();
    for (int again = 0; again < 5; ++again)
        sounds->play(wave);
    // A stopped service never answers: whoever waited for it would not come back, however busy the machine
    // is.
    EXPECT_LT(watch.elapsed(), 10'000);
    sounds.reset();
    EXPECT_LT(watch.elapsed(), 20'000) << "closing does not wait for it";

    ::kill(static_cast<pid_t>(service.processId()), SIGCONT);
    for (QProcess* process : {&ear, &service}) {
        process->terminate();
        process->waitForFinished(kAlarmPatience);
    }
    if (before.isEmpty())
        qunsetenv("PULSE_SERVER");
    else
        qputenv("PULSE_SERVER", before);
}

} // namespace holdfast::app::test

#include "count_alarm_test.moc"

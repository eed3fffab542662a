// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/workshop.h"

#include "app/desk/background_work.h"
#include "app/desk/backups_beside.h"
#include "app/desk/formats.h"
#include "app/desk/machine_settings.h"
#include "app/shell/awaited_place.h"
#include "app/shell/command_finder.h"
#include "app/shell/count_alarm.h"
#include "app/shell/foot_line.h"
#include "app/shell/keyboard_keeper.h"
#include "app/shell/keys_slip.h"
#include "app/shell/place_header.h"
#include "app/shell/rail.h"
#include "app/shell/reading_order.h"
#include "app/shell/scan_listener.h"
#include "app/shell/seat.h"
#include "app/shell/shop_paths.h"
#include "app/shell/slip_edge.h"
#include "app/shell/wrong_place.h"
#include "app/slips/slip.h"
#include "app/theme/measures.h"

#include <QApplication>
#include <QKeyEvent>
#include <QLineEdit>
#include <QPointer>
#include <QScrollArea>
#include <QShortcut>
#include <QTimer>

#include <algorithm>
#include <utility>

namespace holdfast::app {

Workshop::Workshop(ShopDesk& desk, QWidget* parent)
    : QWidget(parent)
    , m_desk(desk)
    , m_rail(new Rail(this))
    , m_header(new PlaceHeader(this))
    , m_foot(new FootLine(this))
    , m_slips(new SlipEdge(this))
    , m_room(new QScrollArea(this)) {
    setObjectName(QStringLiteral("workshop"));
    m_room->setObjectName(QStringLiteral("placeRoom"));
    m_room->setFrameShape(QFrame::NoFrame);
    m_room->setFocusPolicy(Qt::NoFocus);
    m_room->viewport()->setAutoFillBackground(false);
    m_room->setWidget(new QWidget);
    m_room->widget()->setAutoFillBackground(false);
    m_room->stackUnder(m_foot);
    connect(m_rail, &Rail::placeChosen, this, [this](PlaceName name) { turnTo(name); });
    connect(m_rail, &Rail::airChosen, this, [this](PlaceId place) {
        SlipTarget matter;
        matter.place = place;
        showSlip(SlipName::RecordReading, matter);
    });
    connect(m_header, &PlaceHeader::backAsked, this, [this] {
        if (m_ledFrom)
            turnTo(*m_ledFrom);
    });
    connect(m_foot, &FootLine::findAsked, this, [this] { finder()->open(); });
    connect(m_foot, &FootLine::keysAsked, this, [this] { act(ShellAct::ShowKeys); });
    connect(m_foot, &FootLine::undoAsked, this, &Workshop::undo);
    connect(m_foot, &FootLine::redoAsked, this, &Workshop::redo);
    connect(m_slips, &SlipEdge::freshAsked, this, [this] { m_openAgain(); });
    connect(m_foot, &FootLine::heightChanged, this, &Workshop::arrange);
    connect(m_header, &PlaceHeader::heightChanged, this, &Workshop::arrange);
    listenToDesk();
    makeWork();
    makeKeys();
    keepKeyboard();
    qApp->installEventFilter(this);
    m_scanner = new ScanListener(this); // after the filter above: the last one installed sees a key first
    connect(m_scanner, &ScanListener::scanned, this, &Workshop::openScanned);
    const auto takePrefix = [this] { m_scanner->setPrefix(scannerPrefix()); };
    connect(m_slips, &SlipEdge::closed, m_scanner, takePrefix);
    takePrefix();
}

Workshop::~Workshop() {
    qApp->removeEventFilter(this);
}

void Workshop::listenToDesk() {
    connect(&m_desk, &ShopDesk::changed, this, [this] {
        if (!m_desk.awaitsClimate())
            endWaitForClimate();
        refreshFrame();
        lookForWrong();
    });
    connect(&m_desk, &ShopDesk::minutePassed, this, [this] {
        showCounts();
        lookForWrong();
    });
    connect(&m_desk, &ShopDesk::wrongChanged, this, &Workshop::lookForWrong);
    connect(&m_desk, &ShopDesk::failed, m_foot, &FootLine::showFailure);
    connect(&m_desk, &ShopDesk::said, m_foot, &FootLine::showWords);
    connect(&m_desk, &ShopDesk::placeAsked, this, &Workshop::leadTo);
    connect(&m_desk, &ShopDesk::slipAsked, this, &Workshop::showSlip);
    connect(&m_desk, &ShopDesk::paperAsked, this, &Workshop::printPaper);
    connect(&m_desk, &ShopDesk::errandAsked, this, &Workshop::doErrand);
    connect(&m_desk, &ShopDesk::textSizeAsked, this, &Workshop::changeTextSize);
    connect(&m_desk, &ShopDesk::puttingBackAsked, this, &Workshop::openPuttingBackSlip);
    connect(&m_desk, &ShopDesk::besideAsked, this, &Workshop::writeBeside);
    m_alarm = new CountAlarm(m_desk, *this);
    connect(m_alarm, &CountAlarm::rang, this, [this](const QString& words) {
        // The press walk says it itself, larger.
        if (m_current != PlaceName::PressWalk)
            m_foot->showWords(words);
    });
    connect(m_alarm, &CountAlarm::walkAsked, this, [this] { turnTo(PlaceName::PressWalk); });
}

void Workshop::makeKeys() {
    for (const BuiltPlace& place : builtPlaces())
        connect(new QShortcut(place.keys(), this), &QShortcut::activated, this,
                [this, name = place.name] { turnTo(name); });
    const auto key = [this](const QKeySequence& keys, auto&& then) {
        connect(new QShortcut(keys, this), &QShortcut::activated, this, then);
    };
    key(QKeySequence(Qt::CTRL | Qt::Key_K), [this] { finder()->open(); });
    // What is under an open form is not seen to be undone or redone.
    const auto unlessInForm = [this](void (Workshop::*then)()) {
        if (m_slips->isOpen())
            m_foot->showWords(tr("A form is open. Leave it with Esc, then Ctrl+Z undoes the last action."));
        else
            (this->*then)();
    };
    key(QKeySequence(QKeySequence::Undo), [unlessInForm] { unlessInForm(&Workshop::undo); });
    key(QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_Z), [unlessInForm] { unlessInForm(&Workshop::redo); });
    key(QKeySequence(Qt::Key_F6), [this] { changeLight(); });
    key(QKeySequence(Qt::CTRL | Qt::Key_E), [this] { changeLight(); });
    key(QKeySequence(Qt::Key_F1), [this] { act(ShellAct::ShowKeys); });
    key(QKeySequence(Qt::CTRL | Qt::Key_Plus), [this] { act(ShellAct::LargerText); });
    key(QKeySequence(Qt::CTRL | Qt::Key_Equal), [this] { act(ShellAct::LargerText); });
    key(QKeySequence(Qt::CTRL | Qt::Key_Minus), [this] { act(ShellAct::SmallerText); });
    key(QKeySequence(Qt::CTRL | Qt::Key_0), [this] { act(ShellAct::UsualText); });
}

void Workshop::keepKeyboard() {
    KeyboardKeeper::Room room;
    room.partOf = [this](const QWidget* widget) -> QWidget* {
        for (QWidget* part : {static_cast<QWidget*>(m_slips), static_cast<QWidget*>(m_finder),
                              static_cast<QWidget*>(place())})
            if (part != nullptr && (part == widget || part->isAncestorOf(widget)))
                return part;
        // The tools of the place, which are in the header.
        return m_header->isOfTools(widget) ? place() : nullptr;
    };
    room.usualPart = [this] { return place(); };
    room.giveBack = [this](QWidget* part) {
        if (part == m_slips)
            m_slips->takeKeyboard();
        else if (Place* shown = place(); shown != nullptr)
            shown->takeKeyboard();
    };
    m_keyboard = new KeyboardKeeper(this, std::move(room));
    connect(m_slips, &SlipEdge::closed, m_keyboard, &KeyboardKeeper::settleSoon);
}

bool Workshop::focusNextPrevChild(bool next) {
    return m_keyboard->move(next);
}

CommandFinder* Workshop::finder() {
    if (m_finder == nullptr) {
        m_finder = new CommandFinder(m_desk, this);
        connect(m_finder, &CommandFinder::chosen, this, &Workshop::follow);
        // A click or a key elsewhere leaves the finder.
        connect(qApp, &QApplication::focusChanged, m_finder, [this](QWidget*, QWidget* now) {
            if (m_finder->isOpen() && now != nullptr && !m_finder->isAncestorOf(now) && isAncestorOf(now))
                m_finder->close();
        });
        arrange();
    }
    return m_finder;
}

void Workshop::closeFinder() {
    if (m_finder != nullptr)
        m_finder->close();
}

void Workshop::makeWork() {
    m_work = new BackgroundWork(this);
    connect(m_work, &BackgroundWork::progressed, m_foot, &FootLine::showWork);
    connect(m_work, &BackgroundWork::succeeded, m_foot, [this](const QString& words) {
        m_foot->finishWork();
        m_foot->showWords(words);
        emit m_desk.errandDone();
    });
    connect(m_work, &BackgroundWork::failed, m_foot, [this](const QString& reason) {
        m_foot->finishWork();
        m_foot->showFailure(reason);
    });
    connect(m_foot, &FootLine::stopAsked, m_work, &BackgroundWork::stop);
}

void Workshop::begin() {
    turnTo(keptPlace(m_desk.file()).name);
    // Counts and the last action come after the place is seen.
    QTimer::singleShot(0, this, [this] {
        refreshFrame();
        lookForWrong();
        checkOfTheDay();
        if (!isDemoShop(m_desk.file().path()))
            m_desk.backups().begin();
    });
}

void Workshop::refreshFrame() {
    showCounts();
    m_foot->showLast(m_desk.file());
    // The reason stays for as long as it is true.
    if (const Sentence unreadable = m_desk.wrong().unreadable; !unreadable.empty())
        m_foot->showFailure(words(unreadable));
}

void Workshop::showCounts() {
    if (!m_desk.awaitsClimate())
        m_rail->show(m_desk);
}

// Places that waited for the climate log are made now, and the one in view takes up what it was asked for.
void Workshop::endWaitForClimate() {
    const std::vector<AwaitedPlace*> awaited = std::exchange(m_awaited, {});
    const QPointer<QWidget> focused = QApplication::focusWidget();
    std::optional<SlipTarget> matter;
    for (AwaitedPlace* each : awaited) {
        if (each == place())
            matter = each->matter();
        m_places.erase(each->built().name);
    }
    if (matter)
        present(*builtPlace(m_current), *matter);
    qDeleteAll(awaited);
    if (isOverPlace(focused))
        focused->setFocus();
    if (const auto slip = std::exchange(m_slipAwaited, std::nullopt))
        showSlip(slip->slip, slip->matter);
}

Place* Workshop::place() const {
    if (m_wrong != nullptr)
        return m_wrong;
    const auto found = m_places.find(m_current);
    return found == m_places.end() ? nullptr : found->second;
}

Place* Workshop::made(const BuiltPlace& built) {
    const auto found = m_places.find(built.name);
    if (found != m_places.end())
        return found->second;
    Place* place = nullptr;
    if (built.needsClimate && m_desk.awaitsClimate())
        place = m_awaited.emplace_back(new AwaitedPlace(m_desk, built, m_room->widget()));
    else
        place = built.make(m_desk, m_room->widget());
    if (place->objectName().isEmpty())
        place->setObjectName(QString::fromLatin1(built.code));
    if (place->accessibleName().isEmpty())
        place->setAccessibleName(built.words());
    place->hide();
    connect(place, &Place::subtitleChanged, this, [this, place] {
        if (place == this->place())
            m_header->setSubtitle(place->subtitle());
    });
    connect(place, &Place::ownStepsChanged, this, [this, place] {
        if (place == this->place())
            showOwnSteps(*place);
    });
    m_places.emplace(built.name, place);
    return place;
}

void Workshop::turnTo(PlaceName name, const SlipTarget& matter) {
    const BuiltPlace* built = builtPlace(name);
    if (built == nullptr)
        return;
    closeFinder();
    m_slips->close();
    if (m_wrong != nullptr) {
        m_foot->showWords(tr("First mend what is wrong, or go on without it."));
        return;
    }
    m_slipAwaited.reset();
    m_ledFrom.reset();
    m_header->setWayBack({});
    present(*built, matter);
}

void Workshop::present(const BuiltPlace& built, const SlipTarget& matter) {
    Place* before = place();
    Place* now = made(built);
    m_current = built.name;
    m_rail->setCurrent(built.name);
    m_header->setTitle(built.words());
    m_header->setTools(now->headerTools());
    m_header->setSubtitle(now->subtitle());
    arrange();
    now->show();
    if (before != nullptr && before != now)
        before->hide();
    now->opened();
    now->turnTo(matter);
    putKeyboardIn(*now);
    m_header->setSubtitle(now->subtitle());
    showOwnSteps(*now);
    if (before != now)
        QTimer::singleShot(0, this, [this, &built] { keepPlace(m_desk.file(), built); });
}

void Workshop::showOwnSteps(const Place& shown) {
    const OwnSteps steps = shown.ownSteps();
    m_foot->setOwnSteps(steps.undo, steps.redo);
}

// Where the place put it; or, where that cannot take it yet, as a key that waits for a count, in the place
// all the same: else Qt would find the rail for it when the window comes to the front.
void Workshop::putKeyboardIn(Place& shown) {
    const QWidget* focused = window()->focusWidget();
    const bool isThere = focused != nullptr && focused->isEnabled() &&
                         (&shown == focused || shown.isAncestorOf(focused) || m_header->isOfTools(focused));
    if (!isThere && !isOverPlace(focused) && !moveFocusWithin(&shown, true))
        shown.setFocus(Qt::OtherFocusReason);
}

void Workshop::leadTo(PlaceName name, const SlipTarget& matter) {
    const PlaceName from = m_current;
    turnTo(name, matter);
    if (from == m_current)
        return;
    m_ledFrom = from;
    m_header->setWayBack(builtPlace(from)->words());
}

void Workshop::follow(const FinderTarget& target) {
    if (const auto* place = std::get_if<GoTo>(&target))
        turnTo(place->place, place->matter);
    else if (const auto* slip = std::get_if<AskSlip>(&target))
        showSlip(slip->slip, slip->matter);
    else if (const auto* paper = std::get_if<AskPaper>(&target))
        printPaper(paper->paper, paper->matter);
    else if (const auto* errand = std::get_if<Errand>(&target))
        doErrand(*errand);
    else
        act(std::get<ShellAct>(target));
}

void Workshop::showSlip(SlipName name, const SlipTarget& matter) {
    closeFinder();
    if (m_desk.awaitsClimate()) {
        m_slipAwaited = AskSlip{name, matter};
        m_foot->showWords(tr("The form opens as soon as the climate readings are read."));
        return;
    }
    Slip* slip = makeSlip(name, m_desk, matter, m_slips);
    if (slip == nullptr) {
        m_foot->showFailure(tr("What this form is about is no longer there."));
        return;
    }
    openSlip(slip, [this, name, matter] { showSlip(name, matter); }, slipKey(name, matter));
}

void Workshop::openSlip(Slip* slip, std::function<void()> again, const QString& key) {
    closeFinder();
    arrange();
    m_openAgain = std::move(again);
    m_slips->open(slip, key);
}

// ── keys ──────────────────────────────────────────────────────────────────────────────────────────────

bool Workshop::isOverPlace(const QWidget* focused) const {
    return focused != nullptr &&
           (m_slips->isAncestorOf(focused) || (m_finder != nullptr && m_finder->isAncestorOf(focused)));
}

bool Workshop::isKeyOfPlace(const QKeySequence& keys) const {
    const Place* below = place();
    if (below == nullptr || keys.isEmpty())
        return false;
    const auto has = [&](const QList<QShortcut*>& shortcuts) {
        return std::ranges::any_of(shortcuts, [&](const QShortcut* each) { return each->key() == keys; });
    };
    return (has(below->findChildren<QShortcut*>()) || has(m_header->findChildren<QShortcut*>())) &&
           !has(findChildren<QShortcut*>(QString(), Qt::FindDirectChildrenOnly));
}

bool Workshop::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::LayoutRequest && watched == m_room->widget())
        followPlace();
    if (event->type() != QEvent::ShortcutOverride)
        return QWidget::eventFilter(watched, event);
    auto* key = static_cast<QKeyEvent*>(event);
    // A line that has nothing of its own to undo or redo leaves Ctrl+Z and Ctrl+Shift+Z to the shop.
    const auto* line = qobject_cast<const QLineEdit*>(watched);
    if (line != nullptr && ((key->matches(QKeySequence::Undo) && !line->isUndoAvailable()) ||
                            (key->matches(QKeySequence::Redo) && !line->isRedoAvailable()))) {
        event->ignore();
        return true;
    }
    // While the keyboard is in a slip or in the finder, the keys of the place below are plain keys.
    const auto* focused = qobject_cast<const QWidget*>(watched);
    if (isOverPlace(focused) && isKeyOfPlace(QKeySequence(key->keyCombination()))) {
        event->accept();
        return true;
    }
    return QWidget::eventFilter(watched, event);
}

} // namespace holdfast::app

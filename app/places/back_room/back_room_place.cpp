// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/back_room/back_room_place.h"

#include "app/desk/formats.h"
#include "app/papers/print_queue.h"
#include "app/places/back_room/room_lines.h"
#include "app/theme/type.h"
#include "app/widgets/button.h"
#include "app/widgets/card.h"
#include "app/widgets/choice.h"
#include "app/widgets/flow_layout.h"
#include "app/widgets/label.h"
#include "app/widgets/vertical_scroll.h"

#include <QBoxLayout>
#include <QKeyEvent>

#include <algorithm>
#include <utility>

namespace holdfast::app {

namespace {

constexpr int kSectionsWidth = 280;
constexpr int kWidestSections = 360;
constexpr int kWidestSummary = kWidestSections - 60;
constexpr int kLeastSheet = 540; // wide; where there is less next to the sections, they go above it
constexpr int kSheetTitle = 52;
// One above the other in a low window: then the place scrolls.
constexpr int kLowestSections = 160;
constexpr int kLowestSheet = 320;

std::optional<std::vector<PrintQueue>>& printersInstead() {
    static std::optional<std::vector<PrintQueue>> queues;
    return queues;
}

} // namespace

BackRoomPlace::BackRoomPlace(ShopDesk& shopDesk, QWidget* parent)
    : Place(shopDesk, parent) {
    setObjectName(QStringLiteral("backRoom"));
    m_row = new QHBoxLayout(this);
    m_row->setContentsMargins(kGutter, 0, kGutter, kCardGap);
    m_row->setSpacing(kCardGap);
    m_row->addWidget(makeSections());
    m_row->addWidget(makeSheet(), 1);
    connect(&desk(), &ShopDesk::changed, this, &BackRoomPlace::refresh);
    connect(&desk(), &ShopDesk::errandDone, this, &BackRoomPlace::refresh);
    connect(&desk(), &ShopDesk::minutePassed, this, &BackRoomPlace::refresh);
    connect(&desk().backups(), &BackupsBeside::changed, this, &BackRoomPlace::refresh);
    readFile(); // so that the sections can take the keyboard when it is first opened
}

QWidget* BackRoomPlace::makeSections() {
    m_sectionsCard = new Card;
    m_sections = new Choice(tr("Sections"), Choice::Shape::Line);
    m_sections->setObjectName(QStringLiteral("sections"));
    m_sections->setColumns(1);
    connect(m_sections, &Choice::chosen, this, [this] {
        m_scroll->ensureVisible(0, 0);
        showOther();
    });
    auto* scroll = new VerticalScroll;
    scroll->column()->setContentsMargins(kFocusRoom, kFocusRoom, kFocusRoom, kFocusRoom);
    scroll->column()->addWidget(m_sections);
    scroll->column()->addStretch(1);
    m_sectionsCard->content()->addWidget(scroll, 1);
    return m_sectionsCard;
}

QWidget* BackRoomPlace::makeSheet() {
    m_sheet = new Card(QString());
    m_sheet->setTitleHeight(kSheetTitle);
    // Above the lines: what the section can do is the first that Tab comes to.
    m_acts = new QWidget;
    auto* head = new QVBoxLayout(m_acts);
    head->setContentsMargins(0, 0, 0, 0);
    head->setSpacing(0);
    m_actsRow = new FlowLayout(nullptr, kSpace12);
    m_actsRow->setContentsMargins(kCardPadding, kSpace12, kCardPadding, kSpace12);
    head->addLayout(m_actsRow);
    head->addWidget(new ThreadLine);
    m_sheet->content()->addWidget(m_acts);
    m_scroll = new VerticalScroll;
    m_scroll->setObjectName(QStringLiteral("roomScroll"));
    m_intro = new Label({}, Type::Body, &Tokens::ink2);
    m_intro->setObjectName(QStringLiteral("roomIntro"));
    m_intro->wrapped();
    m_intro->setContentsMargins(kCardPadding, kSpace16, kCardPadding, kSpace8);
    m_scroll->column()->addWidget(m_intro);
    m_lines = new RoomLines;
    connect(m_lines, &RoomLines::deedAsked, this, &BackRoomPlace::act);
    m_scroll->column()->addWidget(m_lines);
    m_note = new Label({}, Type::Support, &Tokens::ink2);
    m_note->setObjectName(QStringLiteral("roomNote"));
    m_note->wrapped();
    m_note->setContentsMargins(kCardPadding, kSpace12, kCardPadding, kSpace12);
    m_scroll->column()->addWidget(m_note);
    m_scroll->column()->addStretch(1);
    m_sheet->content()->addWidget(m_scroll, 1);
    return m_sheet;
}

QString BackRoomPlace::subtitle() const {
    return words(desk().shop()->facts.settings.shopName);
}

void BackRoomPlace::opened() {
    if (m_isStale)
        readFile();
    m_sections->takeFocus(Qt::OtherFocusReason);
}

void BackRoomPlace::keyPressEvent(QKeyEvent* event) {
    const bool isEnter = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
    if (isEnter && event->modifiers() == Qt::NoModifier && m_sections->isAncestorOf(focusWidget()))
        goIntoSheet();
    else
        Place::keyPressEvent(event);
}

// Where Tab goes too: the section's acts, or its lines where it has none.
void BackRoomPlace::goIntoSheet() {
    if (m_actsRow->count() > 0)
        m_actsRow->itemAt(0)->widget()->setFocus(Qt::TabFocusReason);
    else
        m_lines->setFocus(Qt::TabFocusReason);
}

void BackRoomPlace::resizeEvent(QResizeEvent* event) {
    Place::resizeEvent(event);
    layCards();
}

// The list of sections goes above the sheet where the window is too narrow for both.
void BackRoomPlace::layCards() {
    const int wide = std::clamp(m_sectionsCard->minimumSizeHint().width(), kSectionsWidth, kWidestSections);
    const bool isNarrow = width() < wide + kLeastSheet + kCardGap + 2 * kGutter;
    m_row->setDirection(isNarrow ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight);
    m_sectionsCard->setMinimumWidth(isNarrow ? 0 : wide);
    m_sectionsCard->setMaximumWidth(isNarrow ? QWIDGETSIZE_MAX : wide);
    const int all = m_sections->sizeHint().height() + 2 * kFocusRoom;
    const int room = std::min(height() / 2, height() - kLowestSheet - 2 * kCardGap);
    const int high = isNarrow ? std::min(all, std::max(kLowestSections, room)) : 0;
    m_sheet->setMinimumHeight(isNarrow ? kLowestSheet : 0);
    m_sectionsCard->setMinimumHeight(high);
    m_sectionsCard->setMaximumHeight(isNarrow ? high : QWIDGETSIZE_MAX);
}

void BackRoomPlace::turnTo(const SlipTarget& matter) {
    if (matter.section)
        turnToSection(*matter.section);
    else if (matter.style)
        turnToSection(RoomSection::Styles);
    else if (matter.film)
        turnToSection(RoomSection::Films);
    else if (matter.press)
        turnToSection(RoomSection::Presses);
    else if (matter.fair)
        turnToSection(RoomSection::Fairs);
}

void BackRoomPlace::turnToSection(RoomSection section) {
    if (m_isStale)
        readFile();
    m_sections->setChosen(static_cast<int>(section));
    showOther();
}

void BackRoomPlace::refresh() {
    m_isStale = true;
    if (isVisible()) {
        readFile();
        emit subtitleChanged();
    }
}

void BackRoomPlace::readFile() {
    const auto file = readRoomFile(desk().file());
    if (!desk().done(file))
        return;
    const auto queues = std::exchange(m_file.printers.queues, std::nullopt);
    m_file = *file;
    m_file.printers.queues = queues;
    readBackups();
    m_isStale = false;
    showSections();
    showSheet();
}

// They are looked at in the background; the place is notified when that has ended.
void BackRoomPlace::readBackups() {
    BackupsBeside& backups = desk().backups();
    m_file.makesBackups = backups.isOn();
    m_file.secondUpToDateOn = backups.secondUpToDateOn();
    if (backups.isLookedAt())
        m_file.backups = backups.known();
}

RoomSection BackRoomPlace::section() const {
    return static_cast<RoomSection>(std::max(0, m_sections->chosenAt()));
}

void BackRoomPlace::showSections() {
    QVector<ChoiceItem> items;
    for (int at = 0; at < kRoomSections; ++at) {
        const RoomSheet sheet = roomSheet(static_cast<RoomSection>(at), *desk().shop(), m_file);
        items.append({sheet.title, fitted(sheet.summary, Type::Small, kWidestSummary)});
    }
    const int chosen = std::max(0, m_sections->chosenAt());
    m_sections->setItems(items);
    m_sections->setChosen(chosen);
    layCards();
}

// Another section than before. What is the matter with a printer may have changed since it was last in view.
void BackRoomPlace::showOther() {
    showSheet();
    if (section() == RoomSection::Printers)
        lookForPrinters();
    else if (section() == RoomSection::Copies)
        desk().backups().look();
}

void BackRoomPlace::showSheet() {
    const RoomSheet sheet = roomSheet(section(), *desk().shop(), m_file);
    m_sheet->setTitle(sheet.title);
    m_intro->setText(sheet.intro);
    m_intro->setVisible(!sheet.intro.isEmpty());
    m_lines->show(sheet.lines);
    m_lines->setVisible(!sheet.lines.isEmpty());
    m_note->setText(sheet.note);
    m_note->setVisible(!sheet.note.isEmpty());
    showActs(sheet);
    if (section() == RoomSection::Printers && !m_file.printers.queues)
        lookForPrinters();
}

// The buttons are made again with each sheet, so that a key belongs to one of them only.
void BackRoomPlace::showActs(const RoomSheet& sheet) {
    while (QLayoutItem* item = m_actsRow->takeAt(0)) {
        delete item->widget();
        delete item;
    }
    for (const RoomAct& each : sheet.acts) {
        auto* button = new Button(each.words, each.iconName, Button::Kind::Plain);
        button->setKey(each.key);
        connect(button, &QAbstractButton::clicked, this, [this, deed = each.deed] { act(deed); });
        m_actsRow->addWidget(button);
        button->show(); // its key counts from now on
    }
    m_acts->setVisible(!sheet.acts.isEmpty());
}

void BackRoomPlace::act(const RoomDeed& deed) {
    if (const auto* slip = std::get_if<OpenSlip>(&deed)) {
        emit desk().slipAsked(slip -> slip, slip->matter);
    } else if (const auto* errand = std::get_if<Errand>(&deed)) {
        emit desk().errandAsked(*errand);
    } else if (const auto* again = std::get_if<DoAgain>(&deed)) {
        desk().done(db::tryAgain(desk().file(), again->entry));
    } else if (const auto* gone = std::get_if<LetItGo>(&deed)) {
        if (desk().done(db::dropSetAside(desk().file(), gone->entry)))
            refresh();
    } else if (const auto* wish = std::get_if<UsePrinter>(&deed)) {
        usePrinter(*wish);
    } else if (const auto* print = std::get_if<PrintPaper>(&deed)) {
        emit desk().paperAsked(print -> paper, {});
    } else if (std::holds_alternative<LookForPrinters>(deed)) {
        m_file.printers.queues.reset();
        showSheet();
    } else if (const auto* loud = std::get_if<MakeAsLoud>(&deed)) {
        keepLoudness(loud->loudness);
        refresh();
        if (loud->loudness != Loudness::Off)
            emit desk().knockAsked(); // how loud that is
    } else if (std::holds_alternative<HearKnock>(deed)) {
        emit desk().knockAsked();
    } else if (const auto* large = std::get_if<MakeTextAsLarge>(&deed)) {
        emit desk().textSizeAsked(large -> percent);
    } else if (const auto* backup = std::get_if<PutBackBackup>(&deed)) {
        emit desk().puttingBackAsked(backup -> backup);
    } else if (const auto* turn = std::get_if<TurnToSection>(&deed)) {
        turnToSection(turn->section);
        goIntoSheet();
    }
}

void BackRoomPlace::setPrinters(std::optional<std::vector<PrintQueue>> queues) {
    printersInstead() = std::move(queues);
}

void BackRoomPlace::lookForPrinters() {
    if (printersInstead()) {
        m_file.printers.queues = printersInstead();
        showSheet();
        return;
    }
    // A print service in the network may take seconds, in which it cannot be asked again.
    if (m_printers.isUnderWay())
        return;
    m_printers.begin([](auto&) { return printQueues(); },
                     [this](std::vector<PrintQueue> queues) {
                         m_file.printers.queues = std::move(queues);
                         if (section() == RoomSection::Printers)
                             showSheet();
                     });
}

void BackRoomPlace::usePrinter(const UsePrinter& wish) {
    keepPrinter(wish.use, wish.name);
    const QString printer =
        wish.name.isEmpty() ? tr("the usual printer") : tr("the printer %1").arg(wish.name);
    desk().say((wish.use == PaperUse::Labels ? tr("Labels go to %1 from now on.")
                                             : tr("Sheets go to %1 from now on."))
                   .arg(printer));
    refresh();
}

} // namespace holdfast::app

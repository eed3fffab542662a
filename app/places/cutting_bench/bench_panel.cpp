// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/cutting_bench/bench_panel.h"

#include "app/desk/formats.h"
#include "app/places/cutting_bench/bench_groups.h"
#include "app/places/cutting_bench/bench_rows.h"
#include "app/places/cutting_bench/share_bar.h"
#include "app/slips/option_list.h"
#include "app/widgets/button.h"
#include "app/widgets/fact_block.h"
#include "app/widgets/flow_layout.h"
#include "app/widgets/key_hint.h"
#include "app/widgets/label.h"
#include "app/widgets/vertical_scroll.h"

#include <QBoxLayout>

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr int kSideBySide = 620; // as wide as this, the foot is at the right of the lists
constexpr int kFootWidth = 352;
constexpr int kLow = 560; // lower than this, only the acts are always in view
constexpr int kLinkHeight = 32;
constexpr int kSaveHeight = 44;

} // namespace

BenchPanel::BenchPanel(ShopDesk& desk, BenchModel& model, QWidget* parent)
    : Card(tr("On this film"), parent)
    , m_desk(desk)
    , m_model(model) {
    setObjectName(QStringLiteral("benchPanel"));
    auto* whole = new QWidget;
    m_body = new QBoxLayout(QBoxLayout::TopToBottom, whole);
    m_body->setContentsMargins(0, 0, 0, 0);
    m_body->setSpacing(0);
    m_body->addWidget(makeLists(), 1);
    m_foot = new QWidget;
    auto* foot = new QVBoxLayout(m_foot);
    foot->setContentsMargins(0, 0, 0, 0);
    foot->setSpacing(0);
    foot->addWidget(new ThreadLine);
    m_details = makeDetails();
    foot->addWidget(m_details);
    m_acts = makeActs();
    foot->addWidget(m_acts);
    foot->addStretch(1);
    m_body->addWidget(m_foot);
    content()->addWidget(whole);
}

QWidget* BenchPanel::makeLists() {
    m_scroll = new VerticalScroll;
    QVBoxLayout* column = m_scroll->column();
    column->setContentsMargins(kCardPadding, kSpace8, kCardPadding, kSpace8);
    column->setSpacing(kSpace4);
    column->addWidget(makeLinks());
    m_groups = new BenchGroups;
    connect(m_groups, &BenchGroups::chosen, &m_model, &BenchModel::choose);
    column->addWidget(m_groups);
    m_moreGroups = new Button({}, Button::Kind::Quiet);
    m_moreGroups->setObjectName(QStringLiteral("moreOnThisFilm"));
    m_moreGroups->setTargetHeight(kLinkHeight);
    connect(m_moreGroups, &Button::clicked, this, [this] {
        m_groups->showAll();
        refresh();
    });
    column->addWidget(m_moreGroups);

    const auto rows = [&](const QString& title, const char* name) {
        auto* made = new BenchRows(title, QLatin1String(name));
        column->addWidget(made);
        return made;
    };
    m_noRoll = rows(tr("No roll"), "noRoll");
    connect(m_noRoll, &BenchRows::acted, this, [this] {
        SlipTarget matter;
        matter.film = m_model.film()->film;
        emit m_desk.slipAsked(SlipName::ReceiveRoll, matter);
    });
    m_leftOut = rows(tr("Left out"), "leftOut");
    connect(m_leftOut, &BenchRows::acted, this,
            [this](int row) { m_model.putBack(m_leftOutRows[static_cast<std::size_t>(row)]); });
    connect(m_leftOut, &BenchRows::actedOnAll, &m_model, &BenchModel::putAllBack);
    m_lacking = rows(tr("On no roll"), "lacking");
    m_notYet = rows(tr("Waiting"), "notYet");
    connect(m_notYet, &BenchRows::acted, this, [this](int row) {
        const auto& [act, matter] = m_notYetRows[static_cast<std::size_t>(row)];
        m_desk.free(act, matter);
    });
    m_rollsTitle = new KeyHint(tr("Cut first from"), QKeySequence(Qt::Key_L));
    column->addWidget(m_rollsTitle);
    m_rolls = new OptionList(tr("Roll to cut from first"));
    m_rolls->setObjectName(QStringLiteral("rolls"));
    m_rolls->setFrameShape(QFrame::NoFrame);
    m_rollsTitle->jumpTo(m_rolls);
    connect(m_rolls, &OptionList::chosen, this, &BenchPanel::chooseRoll);
    column->addWidget(m_rolls);
    m_offcuts = rows(tr("Offcuts"), "offcuts");
    connect(m_offcuts, &BenchRows::turned, this, [this](int row, bool keeps) {
        const auto& [roll, area] = m_offcutRows[static_cast<std::size_t>(row)];
        m_model.setKeepsOffcut(roll, area, keeps);
    });
    column->addWidget(makeCutList());
    column->addStretch(1);
    return m_scroll;
}

QWidget* BenchPanel::makeLinks() {
    m_linkRow = new QWidget;
    auto* row = new FlowLayout(m_linkRow, kSpace4);
    for (const char* name : {"toLeftOut", "toLacking", "toNotYet", "toRolls", "toCut"}) {
        auto* link = new Button({}, Button::Kind::Quiet);
        link->setObjectName(QLatin1String(name));
        link->setTargetHeight(kLinkHeight);
        row->addWidget(link);
        const std::size_t at = m_links.size();
        connect(link, &Button::clicked, this, [this, at] { showSection(m_links[at].section); });
        m_links.push_back({link, nullptr});
    }
    return m_linkRow;
}

// The keyboard goes to the first thing in it, and then all of it is brought into view.
void BenchPanel::showSection(QWidget* section) {
    QList<QWidget*> parts = section->findChildren<QWidget*>();
    parts.prepend(section);
    for (QWidget* part : parts)
        if (part->isVisible() && part->isEnabled() && (part->focusPolicy() & Qt::TabFocus)) {
            part->setFocus(Qt::OtherFocusReason);
            break;
        }
    m_scroll->widget()->layout()->activate();
    const int top = section->mapTo(m_scroll->widget(), QPoint()).y();
    m_scroll->ensureVisible(0, top + section->height(), 0, kSpace8);
    m_scroll->ensureVisible(0, top, 0, kSpace8);
}

// A list of its own, which scrolls and finds what is typed: after a fair dozens may be cut and unpressed.
QWidget* BenchPanel::makeCutList() {
    m_cut = new QWidget;
    m_cut->setObjectName(QStringLiteral("cutNotPressed"));
    auto* column = new QVBoxLayout(m_cut);
    column->setContentsMargins(0, kSpace8, 0, 0);
    column->setSpacing(kSpace4);
    column->addWidget(new Label(tr("Cut, not pressed yet"), Type::BodyStrong));
    m_cutList = new OptionList(tr("Decals that are cut and not pressed yet"));
    m_cutList->setObjectName(QStringLiteral("cutDecals"));
    m_cutList->setFrameShape(QFrame::NoFrame);
    connect(m_cutList, &OptionList::activated, this, &BenchPanel::markMiscut);
    connect(m_cutList, &OptionList::chosen, this, [this] { m_miscut->setCannot({}); });
    column->addWidget(m_cutList);
    m_miscut = new Button(tr("Mark miscut"));
    m_miscut->setObjectName(QStringLiteral("markMiscut"));
    m_miscut->setTargetHeight(kLinkHeight);
    connect(m_miscut, &Button::clicked, this, &BenchPanel::markMiscut);
    column->addWidget(m_miscut, 0, Qt::AlignLeft);
    return m_cut;
}

QWidget* BenchPanel::makeDetails() {
    auto* details = new QWidget;
    auto* column = new QVBoxLayout(details);
    column->setContentsMargins(kCardPadding, kSpace4, kCardPadding, 0);
    column->setSpacing(kSpace8);
    m_sentence = new CutSentence;
    connect(m_sentence, &CutSentence::turned, this, &BenchPanel::turn);
    column->addWidget(m_sentence);
    auto* facts = new QHBoxLayout;
    facts->setSpacing(kSpace12);
    m_length = new FactBlock(tr("Length used"));
    m_length->setObjectName(QStringLiteral("lengthUsed"));
    m_left = new FactBlock({});
    m_left->setObjectName(QStringLiteral("leftOnRoll"));
    facts->addWidget(m_length, 1);
    facts->addWidget(m_left, 1);
    column->addLayout(facts);
    m_shares = new ShareBar;
    column->addWidget(m_shares);
    m_least = (new Label({}, Type::Small, &Tokens::ink2))->wrapped();
    m_least->setObjectName(QStringLiteral("lengthWords"));
    column->addWidget(m_least);
    return details;
}

QWidget* BenchPanel::makeActs() {
    auto* acts = new QWidget;
    auto* column = new QVBoxLayout(acts);
    column->setContentsMargins(kCardPadding, kSpace12, kCardPadding, kSpace12);
    column->setSpacing(kSpace8);
    m_save = new Button(tr("Save cut file"), QStringLiteral("scissors"), Button::Kind::Primary);
    m_save->setObjectName(QStringLiteral("saveCutFile"));
    m_save->setTargetHeight(kSaveHeight);
    m_save->setKey(QKeySequence(QKeySequence::Save));
    connect(m_save, &Button::clicked, this, &BenchPanel::saveAsked);
    column->addWidget(m_save);
    auto* row = new QHBoxLayout;
    row->setSpacing(kSpace8);
    m_sheet = new Button(tr("Cut sheet"), QStringLiteral("printer"));
    m_sheet->setObjectName(QStringLiteral("cutSheet"));
    m_sheet->setKey(QKeySequence(Qt::Key_S));
    connect(m_sheet, &Button::clicked, this, &BenchPanel::sheetAsked);
    m_markCut = new Button(tr("Mark cut"), QStringLiteral("tick"));
    m_markCut->setObjectName(QStringLiteral("markCut"));
    m_markCut->setKey(QKeySequence(Qt::Key_C));
    connect(m_markCut, &Button::clicked, this, &BenchPanel::cutAsked);
    row->addWidget(m_sheet, 1);
    row->addWidget(m_markCut, 1);
    column->addLayout(row);
    return acts;
}

// ── where its parts are ───────────────────────────────────────────────────────────────────────────────

void BenchPanel::resizeEvent(QResizeEvent* event) {
    Card::resizeEvent(event);
    arrange();
}

QSize BenchPanel::minimumSizeHint() const {
    const int wide = std::max(m_scroll->minimumSizeHint().width(), m_foot->layout()->minimumSize().width());
    return {wide + 2, Card::minimumSizeHint().height()}; // and the card's border
}

void BenchPanel::arrange() {
    const bool isWide = width() >= kSideBySide;
    const auto direction = isWide ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom;
    if (m_body->direction() != direction) {
        m_body->setDirection(direction);
        m_foot->setMinimumWidth(isWide ? kFootWidth : 0);
        m_foot->setMaximumWidth(isWide ? kFootWidth : QWIDGETSIZE_MAX);
    }
    auto* foot = static_cast<QVBoxLayout*>(m_foot->layout());
    const bool isLow = !isWide && height() < kLow;
    const bool isInFoot = foot->indexOf(m_details) >= 0;
    if (isLow && isInFoot) {
        foot->removeWidget(m_details);
        m_scroll->column()->insertWidget(1, m_details);
        m_details->layout()->setContentsMargins(0, 0, 0, kSpace8);
    } else if (!isLow && !isInFoot) {
        m_scroll->column()->removeWidget(m_details);
        foot->insertWidget(foot->indexOf(m_acts), m_details);
        m_details->layout()->setContentsMargins(kCardPadding, kSpace4, kCardPadding, 0);
    }
}

const Nest* BenchPanel::nest() const {
    if (!m_model.film() || m_model.nests().empty())
        return nullptr;
    const auto chosen = m_model.chosen();
    const Nest* with = chosen ? m_model.nestOf(*chosen) : nullptr;
    return with ? with : &m_model.nests().front();
}

// ── what is done in it ────────────────────────────────────────────────────────────────────────────────

void BenchPanel::turn(CutSentence::Choice choice) {
    bool& what = choice == CutSentence::Choice::Frames ? m_wish.hasFrames : m_wish.hasPartingCut;
    what = !what;
    showFigures();
    emit wishChanged();
}

void BenchPanel::chooseRoll(int at) {
    if (!m_model.film() || at < 0)
        return;
    const RollOffer& offer = m_model.film()->rolls[static_cast<std::size_t>(at)];
    if (!offer.mayBeUsed)
        m_desk.say(words(offer.reason));
    m_model.setFirstRoll(offer.roll);
    refresh();
}

void BenchPanel::markMiscut() {
    const int at = m_cutList->chosenAt();
    if (at < 0)
        return;
    SlipTarget matter;
    matter.decal = m_cutRows[static_cast<std::size_t>(at)];
    const DecalOnGarment decal = m_model.decal(*matter.decal);
    matter.garment = decal.garment ? std::optional{decal.garment->id} : std::nullopt;
    emit m_desk.slipAsked(SlipName::Miscut, matter);
}

bool BenchPanel::showCut(DecalId decal) {
    const auto found = std::ranges::find(m_cutRows, decal);
    if (found == m_cutRows.end())
        return false;
    m_cutList->setChosen(static_cast<int>(found - m_cutRows.begin()));
    m_miscut->setCannot({});
    m_cutList->setFocus(Qt::OtherFocusReason);
    m_cutList->scrollTo(m_cutList->currentIndex());
    return true;
}

} // namespace holdfast::app

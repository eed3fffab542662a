#include "app/places/cutting_bench/bench_panel.h"

#include "app/desk/formats.h"
#include "app/places/cutting_bench/bench_groups.h"
#include "app/places/cutting_bench/bench_rows.h"
#include "app/places/cutting_bench/share_bar.h"
#include "app/slips/option_list.h"
#include "app/theme/icons.h"
#include "app/widgets/banner.h"
#include "app/widgets/button.h"
#include "app/widgets/fact_block.h"
#include "app/widgets/key_hint.h"
#include "app/widgets/label.h"
#include "app/widgets/switch.h"
#include "app/widgets/vertical_scroll.h"

#include <QBoxLayout>
#include <QPainter>

namespace holdfast::app {

namespace {

constexpr int kSwitchRow = 38;

class RowIcon : public QWidget {
public:
    explicit RowIcon(QString iconName)
        : m_iconName(std::move(iconName)) {
        setFixedSize(kIcon, kIcon);
    }

protected:
    void paintEvent(QPaintEvent*) override {
        QPainter painter(this);
        paintIcon(painter, QRectF(rect()), m_iconName, tokens().ink);
    }

private:
    QString m_iconName;
};

} // namespace

BenchPanel::BenchPanel(ShopDesk& desk, BenchModel& model, QWidget* parent)
    : Card(tr("On this film"), parent)
    , m_desk(desk)
    , m_model(model) {
    setObjectName(QStringLiteral("benchPanel"));
    content()->addWidget(makeLists(), 1);
    m_foot = new QWidget;
    auto* foot = new QVBoxLayout(m_foot);
    foot->setContentsMargins(0, 0, 0, 0);
    foot->setSpacing(0);
    foot->addWidget(new ThreadLine);
    foot->addWidget(makeSwitches());
    foot->addWidget(makeFigures());
    foot->addWidget(makeActs());
    content()->addWidget(m_foot);
}

QWidget* BenchPanel::makeLists() {
    auto* scroll = new VerticalScroll;
    QVBoxLayout* column = scroll->column();
    column->setContentsMargins(kCardPadding, kSpace8, kCardPadding, kSpace8);
    column->setSpacing(kSpace4);
    m_useFirst = new Banner;
    m_useFirst->setObjectName(QStringLiteral("useFirst"));
    column->addWidget(m_useFirst);
    m_rollsTitle = new KeyHint(tr("Cut first from"), QKeySequence(Qt::Key_L));
    column->addWidget(m_rollsTitle);
    m_rolls = new OptionList(tr("Roll to cut from first"));
    m_rolls->setObjectName(QStringLiteral("rolls"));
    m_rolls->setFrameShape(QFrame::NoFrame);
    m_rollsTitle->jumpTo(m_rolls);
    connect(m_rolls, &OptionList::chosen, this, &BenchPanel::chooseRoll);
    column->addWidget(m_rolls);
    m_groups = new BenchGroups;
    connect(m_groups, &BenchGroups::chosen, &m_model, &BenchModel::choose);
    column->addWidget(m_groups);

    const auto rows = [&](const QString& title, const char* name) {
        auto* made = new BenchRows(title, QLatin1String(name));
        column->addWidget(made);
        return made;
    };
    m_noRoll = rows(tr("No roll"), "noRoll");
    connect(m_noRoll, &BenchRows::acted, this, [this] {
        Matter matter;
        matter.film = m_model.film()->film;
        emit m_desk.slipAsked(SlipName::ReceiveRoll, matter);
    });
    m_leftOut = rows(tr("Left out"), "leftOut");
    connect(m_leftOut, &BenchRows::acted, this,
            [this](int row) { m_model.putBack(m_leftOutRows[static_cast<std::size_t>(row)]); });
    connect(m_leftOut, &BenchRows::actedOnAll, &m_model, &BenchModel::putAllBack);
    m_lacking = rows(tr("On no roll"), "lacking");
    m_notYet = rows(tr("Not to be cut yet"), "notYet");
    connect(m_notYet, &BenchRows::acted, this, [this](int row) {
        const auto& [act, matter] = m_notYetRows[static_cast<std::size_t>(row)];
        m_desk.free(act, matter);
    });
    m_offcuts = rows(tr("Offcuts"), "offcuts");
    connect(m_offcuts, &BenchRows::turned, this, [this](int row, bool keeps) {
        const auto& [roll, area] = m_offcutRows[static_cast<std::size_t>(row)];
        m_model.setKeepsOffcut(roll, area, keeps);
    });
    m_cut = rows(tr("Cut, not pressed yet"), "cutNotPressed");
    connect(m_cut, &BenchRows::acted, this, [this](int row) {
        Matter matter;
        matter.decal = m_cutRows[static_cast<std::size_t>(row)];
        const DecalOnGarment decal = m_model.decal(*matter.decal);
        matter.garment = decal.garment ? std::optional{decal.garment->id} : std::nullopt;
        emit m_desk.slipAsked(SlipName::Miscut, matter);
    });
    column->addStretch(1);
    return scroll;
}

Switch* BenchPanel::addSwitch(QLayout* column, const QString& icon, const QString& name,
                              const char* objectName, Label*& note, bool CutFileWish::*what) {
    auto* line = new QWidget;
    line->setFixedHeight(kSwitchRow);
    auto* row = new QHBoxLayout(line);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(kSpace8);
    row->addWidget(new RowIcon(icon));
    row->addWidget(new Label(name, Type::BodyStrong), 1);
    note = new Label({}, Type::Small, &Tokens::ink2);
    row->addWidget(note);
    auto* turn = new Switch(name);
    turn->setObjectName(QLatin1String(objectName));
    turn->setChecked(m_wish.*what);
    connect(turn, &QCheckBox::toggled, this, [this, what](bool isOn) {
        m_wish.*what = isOn;
        refresh();
        emit wishChanged();
    });
    row->addWidget(turn);
    column->addWidget(line);
    return turn;
}

QWidget* BenchPanel::makeSwitches() {
    auto* switches = new QWidget;
    auto* column = new QVBoxLayout(switches);
    column->setContentsMargins(kCardPadding, kSpace4, kCardPadding, 0);
    column->setSpacing(0);
    addSwitch(column, QStringLiteral("mirror"), tr("Mirror"), "mirror", m_mirrorNote,
              &CutFileWish::isMirrored);
    addSwitch(column, QStringLiteral("weed"), tr("Weed boxes"), "weedBoxes", m_boxesNote,
              &CutFileWish::hasWeedBoxes);
    addSwitch(column, QStringLiteral("scissors"), tr("Cut-off line"), "cutOffLine", m_cutOffNote,
              &CutFileWish::hasCutOffLine);
    return switches;
}

QWidget* BenchPanel::makeFigures() {
    auto* figures = new QWidget;
    auto* column = new QVBoxLayout(figures);
    column->setContentsMargins(kCardPadding, kSpace8, kCardPadding, 0);
    column->setSpacing(kSpace8);
    column->addWidget(new ThreadLine);
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
    m_least = new Label({}, Type::Small, &Tokens::ink2);
    m_least->setObjectName(QStringLiteral("aboveLeast"));
    column->addWidget(m_least);
    return figures;
}

QWidget* BenchPanel::makeActs() {
    auto* acts = new QWidget;
    auto* column = new QVBoxLayout(acts);
    column->setContentsMargins(kCardPadding, kSpace12, kCardPadding, kSpace16);
    column->setSpacing(kSpace12);
    m_save = new Button(tr("Save cut file"), QStringLiteral("scissors"), Button::Kind::Primary);
    m_save->setObjectName(QStringLiteral("saveCutFile"));
    m_save->setTargetHeight(48);
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

const Nest* BenchPanel::nest() const {
    if (!m_model.film() || m_model.nests().empty())
        return nullptr;
    const auto chosen = m_model.chosen();
    const Nest* with = chosen ? m_model.nestOf(*chosen) : nullptr;
    return with ? with : &m_model.nests().front();
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

} // namespace holdfast::app

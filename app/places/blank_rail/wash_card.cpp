// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/blank_rail/wash_card.h"

#include "app/desk/formats.h"
#include "app/desk/garment_words.h"
#include "app/places/blank_rail/rail_words.h"
#include "app/places/blank_rail/wash_rows.h"
#include "app/places/blank_rail/wash_tub.h"
#include "app/theme/drawings.h"
#include "app/theme/icons.h"
#include "app/theme/type.h"
#include "app/widgets/banner.h"
#include "app/widgets/button.h"
#include "app/widgets/choice.h"
#include "app/widgets/field.h"
#include "app/widgets/label.h"
#include "app/widgets/stepper.h"
#include "app/widgets/switch.h"
#include "app/widgets/vertical_scroll.h"
#include "db/actions/blank_actions.h"
#include "db/tables/ledgers.h"

#include <QBoxLayout>

namespace holdfast::app {

namespace {

constexpr int kFreesShown = 4;

void empty(QWidget* box) {
    while (QLayoutItem* item = box->layout()->takeAt(0)) {
        if (QWidget* widget = item->widget()) {
            widget->hide();
            widget->deleteLater();
        }
        delete item;
    }
}

QWidget* column(int spacing) {
    auto* box = new QWidget;
    auto* layout = new QVBoxLayout(box);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(spacing);
    return box;
}

// An icon before a line of words.
class IconLine : public QWidget {
public:
    IconLine(QString iconName, QString text, Role ink)
        : m_iconName(std::move(iconName))
        , m_text(std::move(text))
        , m_ink(ink) {
        setFixedHeight(lineHeight(Type::Support) + kSpace4);
        setToolTip(m_text);
        setAccessibleName(m_text);
    }

protected:
    void paintEvent(QPaintEvent*) override {
        QPainter painter(this);
        paintIcon(painter, QRectF(0, (height() - 18) / 2.0, 18, 18), m_iconName, tokens().*m_ink);
        const QString fitted =
            QFontMetricsF(fontOf(Type::Support)).elidedText(m_text, Qt::ElideRight, width() - 26);
        paintLine(painter, QRectF(26, 0, width() - 26, height()), fitted, Type::Support, tokens().ink);
    }

private:
    QString m_iconName, m_text;
    Role m_ink;
};

} // namespace

WashCard::WashCard(ShopDesk& desk, WashBasket& basket, QWidget* parent)
    : Card(tr("Tonight’s wash"), parent)
    , m_desk(desk)
    , m_basket(basket) {
    setObjectName(QStringLiteral("washCard"));
    setTitle(tr("Tonight’s wash"), QStringLiteral("wash"));

    m_tub = new WashTub;
    auto* tubRoom = new QVBoxLayout;
    tubRoom->setContentsMargins(kSpace4, kSpace12, kSpace4, 0);
    tubRoom->addWidget(m_tub);
    content()->addLayout(tubRoom);
    m_scroll = new VerticalScroll;
    QVBoxLayout* inside = m_scroll->column();
    inside->setContentsMargins(kSpace12, kSpace8, kSpace12, kSpace8);
    inside->setSpacing(kSpace8);
    m_rows = new WashRows;
    connect(m_rows, &WashRows::stepped, this, [this](const RailSpot& spot, int units) {
        m_basket.set(m_desk.shop()->facts, spot, units);
        emit basketChanged();
    });
    inside->addWidget(m_rows);
    m_fullWarning = new Banner;
    m_bleedWarning = new Banner;
    m_softenerWarning = new Banner;
    inside->addWidget(m_fullWarning);
    inside->addWidget(m_bleedWarning);
    inside->addWidget(makeHow());
    inside->addWidget(m_softenerWarning);
    m_frees = column(2);
    inside->addWidget(m_frees);
    m_loads = column(kSpace4);
    inside->addWidget(m_loads);
    inside->addStretch(1);
    content()->addWidget(m_scroll, 1);

    auto* foot = new QWidget;
    auto* footColumn = new QVBoxLayout(foot);
    footColumn->setContentsMargins(kCardPadding, kSpace8, kCardPadding, kCardPadding);
    m_start = new Button(tr("Start wash"), QStringLiteral("wash"), Button::Kind::Primary);
    m_start->setObjectName(QStringLiteral("startWash"));
    m_start->setKey(QKeySequence(Qt::CTRL | Qt::Key_W));
    connect(m_start, &Button::clicked, this, &WashCard::start);
    footColumn->addWidget(m_start);
    content()->addWidget(foot);
    beginDetergent();
}

QWidget* WashCard::makeHow() {
    auto* how = column(kSpace8);
    auto* layout = static_cast<QVBoxLayout*>(how->layout());
    m_detergent = new Field(tr("Detergent"));
    m_detergent->setObjectName(QStringLiteral("detergent"));
    m_detergent->setPlaceholder(tr("if you note it"));
    connect(m_detergent, &Field::edited, this, [this] { m_detergent->setError({}); });
    layout->addWidget(m_detergent);

    auto* waterRow = new QHBoxLayout;
    waterRow->addWidget(new Label(tr("Water"), Type::SupportStrong));
    waterRow->addStretch(1);
    m_water = new Stepper(tr("Water temperature"));
    m_water->setObjectName(QStringLiteral("water"));
    m_water->setRange(10, 95);
    m_water->setSingleStep(5);
    m_water->setValue(30);
    m_water->setSuffix(tr(" °C"));
    m_water->setValueWidth(64);
    waterRow->addWidget(m_water);
    layout->addLayout(waterRow);

    m_drying = new Choice(tr("Drying"), Choice::Shape::Segment);
    m_drying->setObjectName(QStringLiteral("drying"));
    m_drying->setItems({{tr("Line")}, {tr("Tumble low")}, {tr("Tumble")}});
    m_drying->setChosen(0);
    layout->addWidget(m_drying);

    const auto addSwitch = [&](const QString& text, const char* name) {
        auto* row = new QHBoxLayout;
        row->addWidget(new Label(text, Type::SupportStrong));
        row->addStretch(1);
        auto* turned = new Switch(text);
        turned->setObjectName(QString::fromLatin1(name));
        connect(turned, &Switch::toggled, this, &WashCard::fillWarnings);
        row->addWidget(turned);
        layout->addLayout(row);
        return turned;
    };
    m_softener = addSwitch(tr("Softener"), "softener");
    m_sheet = addSwitch(tr("Dryer sheet"), "dryerSheet");
    return how;
}

// The usual detergent is what was poured in last; where nothing was noted, nothing need be.
void WashCard::beginDetergent() {
    const auto usual = m_desk.file().read(db::usualDetergents);
    if (usual.ok() && !usual->empty())
        m_detergent->setText(words(usual->front()));
}

void WashCard::refresh() {
    const auto& shop = m_desk.shop();
    m_basket.keepWashable(shop->facts);
    QColor water = tokens().edge;
    if (!m_basket.isEmpty()) {
        const RailSpot& first = m_basket.units().begin()->first;
        if (const Colour* colour = shop->facts.styles.at(first.style).colour(first.colour))
            water = colourOf(colour->rgb);
    }
    m_tub->show(m_basket.weight(shop->facts), shop->facts.settings.washerHolds, m_basket.count(), water);
    m_start->setCannot(m_basket.isEmpty() ? tr("Choose blanks in the grid first: W adds those of the cell.")
                       : m_basket.weight(shop->facts) > shop->facts.settings.washerHolds
                           ? tr("The washer would be over-full.")
                           : QString());
    m_rows->show(*shop, m_basket);
    fillWarnings();
    fillFrees();
    fillLoads();
}

void WashCard::fillWarnings() {
    const auto& shop = m_desk.shop();
    const bool leavesFilm = m_softener->isChecked() || m_sheet->isChecked();
    m_softenerWarning->setVisible(leavesFilm);
    m_softenerWarning->set(Tone::Held, tr("These blanks will be held."),
                           m_softener->isChecked()
                               ? tr("Softener stays on the fibres and film does not grip. Wash without.")
                               : tr("A dryer sheet leaves softener on the fibres and film does not grip."));

    const auto bleeding = m_basket.bleeding(shop->facts);
    m_bleedWarning->setVisible(!bleeding.empty());
    if (!bleeding.empty())
        m_bleedWarning->set(Tone::Caution, tr("%1 washes alone.").arg(words(bleeding.front())),
                            tr("Its first wash may bleed, judging by its shade."));

    const Grams weight = m_basket.weight(shop->facts);
    m_fullWarning->setVisible(weight > shop->facts.settings.washerHolds);
    m_fullWarning->set(Tone::Held, tr("Too full."),
                       tr("%1, but the washer takes %2: remove some.")
                           .arg(kilograms(weight), kilograms(shop->facts.settings.washerHolds)));
}

void WashCard::fillFrees() {
    empty(m_frees);
    const auto& shop = m_desk.shop();
    const auto freed = m_basket.frees(*shop);
    if (freed.empty())
        return;
    m_frees->layout()->addWidget(new Label(tr("Garments that wait for this wash"), Type::SupportStrong));
    for (std::size_t each = 0; each < freed.size() && each < kFreesShown; ++each)
        m_frees->layout()->addWidget(
            new IconLine(QStringLiteral("press-walk"),
                         tr("%1 %2, %3")
                             .arg(garmentNumber(shop->facts, *freed[each]),
                                  garmentInShort(shop->facts, *freed[each]), decalWords(*freed[each])),
                         &Tokens::green));
    if (freed.size() > kFreesShown)
        m_frees->layout()->addWidget(
            new Label(tr("and %1 more").arg(freed.size() - kFreesShown), Type::Small, &Tokens::ink2));
}

void WashCard::fillLoads() {
    empty(m_loads);
    const auto loads = m_desk.file().read(db::loadsUnderWay);
    if (!loads.ok() || loads->empty())
        return;
    const Now now = m_desk.shop()->now;
    m_loads->layout()->addWidget(new Label(tr("Not dry yet"), Type::SupportStrong));
    for (const db::LoadUnderWay& under : *loads) {
        auto* row = new QWidget;
        auto* layout = new QHBoxLayout(row);
        layout->setContentsMargins(0, 0, 0, 0);
        const LocalTime started = now.toLocal(under.load.startedAt);
        layout->addWidget(
            (new Label(tr("%n blank, washed %1 %2|%n blanks, washed %1 %2", nullptr, howMany(under.units))
                           .arg(dayNear(dateOf(started), now.today()), clock(started)),
                       Type::Support))
                ->wrapped(),
            1);
        auto* dry = new Button(tr("Mark dry"), QStringLiteral("washed"));
        dry->setObjectName(QStringLiteral("markDry"));
        dry->setFocusPolicy(Qt::TabFocus); // a click leaves the keyboard in the grid
        connect(dry, &Button::clicked, this,
                [this, load = under.load.id] { m_desk.done(db::markDry(m_desk.file(), load)); });
        layout->addWidget(dry);
        m_loads->layout()->addWidget(row);
    }
}

void WashCard::focusStart() {
    m_start->setFocus(Qt::OtherFocusReason);
}

void WashCard::setWhole(bool isWhole) {
    m_scroll->setMinimumHeight(isWhole ? m_scroll->widget()->minimumSizeHint().height() : 0);
}

db::WashPlan WashCard::plan() const {
    db::WashPlan plan;
    plan.parts = m_basket.parts(m_desk.shop()->facts);
    plan.detergent = plain(m_detergent->text());
    plan.softener = m_softener->isChecked();
    plan.water = Celsius{static_cast<double>(m_water->value())};
    plan.drying = m_drying->chosenAt() == 1   ? Drying::TumbleLow
                  : m_drying->chosenAt() == 2 ? Drying::Tumble
                                              : Drying::Line;
    plan.dryerSheet = m_sheet->isChecked();
    return plan;
}

void WashCard::start() {
    if (!m_start->isEnabled())
        return;
    const auto started = db::startWash(m_desk.file(), plan());
    if (!started.ok() && started.error().field == "detergent") {
        m_detergent->setError(words(started.error().message));
        m_detergent->setFocus(Qt::OtherFocusReason);
        return;
    }
    if (!m_desk.done(started))
        return;
    emit washStarted();
    m_basket.clear();
    m_softener->setChecked(false);
    m_sheet->setChecked(false);
    emit basketChanged();
}

} // namespace holdfast::app

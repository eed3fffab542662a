// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/fair_table/centre_panel.h"

#include "app/desk/formats.h"
#include "app/places/fair_table/decal_panel.h"
#include "app/places/fair_table/message_scroll.h"
#include "app/places/fair_table/table_measures.h"
#include "app/theme/measures.h"
#include "app/theme/type.h"
#include "app/widgets/button.h"
#include "app/widgets/card.h"
#include "app/widgets/choice.h"
#include "app/widgets/field.h"
#include "app/widgets/key_hint.h"
#include "app/widgets/label.h"
#include "core/garments/placement_presets.h"
#include "core/trade/unit_words.h"

#include <QHBoxLayout>
#include <QLineEdit>
#include <QVBoxLayout>

#include <algorithm>
#include <cmath>

namespace holdfast::app {

namespace {

constexpr std::int64_t kNarrowest = 5; // mm, as an order may have
constexpr std::int64_t kWidest = 2000;

constexpr int kWholeStage = 320;     // its height where the column scrolls
constexpr int kLowPanelHeight = 600; // of the panel
constexpr int kMessages = 140;
constexpr int kLowMessages = 64;
constexpr int kBesideWide = 430; // of the panel: placements and garment have room side by side
constexpr int kBesideHigh = 300; // of the stage: so have four placements with their name
constexpr int kTopMargin = 10;
constexpr double kLayerWords = 150;

Side seenFrom(Placement placement) {
    return sideOf(placement) == Side::Back ? Side::Back : Side::Front;
}

// As wide as the longest name of a placement is, so that the garment stays where it is whatever the style.
int placementWide() {
    constexpr int kBesideText = 30;
    double widest = 0;
    for (const Placement placement :
         {Placement::Chest, Placement::LeftChest, Placement::Front, Placement::Back, Placement::Sleeve})
        widest = std::max(widest, widthOf(words(withCapital(placementName(placement))), Type::BodyStrong));
    return static_cast<int>(std::ceil(widest)) + kBesideText;
}

std::span<const PlacementPreset> presetsOf(const BlankStyle* style) {
    return style ? presetsFor(style->outline) : std::span<const PlacementPreset>{};
}

} // namespace

CentrePanel::CentrePanel(FairTableModel& model, QWidget* parent)
    : QWidget(parent)
    , m_model(model) {
    build();
    connectStage();
}

QWidget* CentrePanel::buildPlacements() {
    m_placements = new Choice(tr("Placement"), Choice::Shape::Segment);
    m_placements->setMinimumHeight(kStallTarget); // keeps its row while no style is chosen
    m_placements->setObjectName(QStringLiteral("placement"));
    auto* hint = new KeyHint(tr("Placement"), Qt::Key_P);
    hint->setFixedHeight(kStallTarget);
    hint->jumpTo(m_placements);
    m_whereTo = new QWidget;
    m_whereToParts = new QHBoxLayout(m_whereTo);
    m_whereToParts->setContentsMargins(0, 0, 0, 0);
    m_whereToParts->setSpacing(kSpace8);
    m_whereToParts->addWidget(hint, 0, Qt::AlignTop);
    m_whereToParts->addWidget(m_placements, 1);

    m_aboveStage = new QWidget;
    auto* above = new QVBoxLayout(m_aboveStage);
    above->setContentsMargins(0, 0, 0, 0);
    above->setSpacing(9);
    m_aboveRow = new QHBoxLayout;
    m_aboveRow->setContentsMargins(14, kTopMargin, kSpace8, 0);
    m_aboveRow->addWidget(m_whereTo);
    above->addLayout(m_aboveRow);
    above->addWidget(new ThreadLine);
    return m_aboveStage;
}

// At its left the placements, at its right the layers and, at its foot, the width.
void CentrePanel::layOverStage() {
    m_width = new Field(tr("Wide"));
    m_width->setObjectName(QStringLiteral("width"));
    m_width->setSuffix(tr("mm"));
    m_width->setKey(Qt::Key_W);
    m_width->editor()->setMaxLength(12);
    m_width->setFixedWidth(172);
    m_layer = new Button({});
    m_layer->setObjectName(QStringLiteral("layOver"));
    m_layer->setTargetHeight(kStallTarget);
    m_layer->hide();
    auto* onStage = new QHBoxLayout(m_stage);
    onStage->setContentsMargins(kSpace12, kSpace8, kSpace12, kSpace8);
    m_leftOnStage = new QVBoxLayout;
    m_leftOnStage->addStretch();
    auto* right = new QVBoxLayout;
    right->addWidget(m_layer, 0, Qt::AlignRight);
    right->addStretch();
    right->addWidget(m_width, 0, Qt::AlignRight);
    onStage->addLayout(m_leftOnStage);
    onStage->addLayout(right, 1);
}

void CentrePanel::build() {
    m_stage = new GarmentStage;
    m_decals = new DecalPanel(m_model);
    auto* card = new Card;
    card->content()->addWidget(buildPlacements());
    card->content()->addWidget(m_stage, 1);
    card->content()->addWidget(new ThreadLine);
    card->content()->addWidget(m_decals);
    auto* whole = new QVBoxLayout(this);
    whole->setContentsMargins(0, 0, 0, 0);
    whole->addWidget(card);
    layOverStage();
}

void CentrePanel::connectStage() {
    connect(m_placements, &Choice::chosen, this, [this](int at) {
        const Placement placement = presetsOf(m_model.style())[static_cast<std::size_t>(at)].placement;
        m_model.edit(Step::Choice,
                     [&](TableDraft& draft) { choosePlacement(draft, m_model.style(), placement); });
    });
    connect(m_stage, &GarmentStage::picked, this, [this](std::size_t decal) {
        m_model.turn([&](TableDraft& draft) {
            draft.decalAt = decal;
            draft.isAdding = false;
        });
    });
    connect(m_stage, &GarmentStage::moved, this, [this](Millimetres below, Millimetres aside) {
        m_model.edit(Step::Drag, [&](TableDraft& draft) { moveDecal(draft, below, aside); });
    });
    connect(m_stage, &GarmentStage::widened, this, [this](Millimetres width, Millimetres below) {
        m_model.edit(Step::Drag, [&](TableDraft& draft) {
            widenDecal(draft, width);
            if (const TableDecal* decal = draft.decal())
                moveDecal(draft, below, decal->decal.aside);
        });
    });
    connect(m_stage, &GarmentStage::settled, this, [this] { m_model.endStep(); });
    connect(m_layer, &QAbstractButton::clicked, this, [this] {
        const auto other = overlappedBy(m_model.draft());
        if (!other)
            return;
        m_model.edit(Step::Choice, [&](TableDraft& draft) { laySwapped(draft, *draft.decalAt, *other); });
    });
    connect(m_width, &Field::edited, this, &CentrePanel::typeWidth);
    connect(m_width, &Field::finished, this, [this] {
        m_model.endStep();
        m_beforeTyping.reset();
        m_width->setError({});
        refreshWidth();
    });
}

void CentrePanel::typeWidth(const QString& text) {
    const auto width = readWhole(text, tr("Width in mm"), kNarrowest, kWidest);
    m_width->setError(width.ok() || text.trimmed().isEmpty() ? QString() : words(width.error().message));
    if (const TableDecal* decal = m_model.draft().decal(); decal && !m_beforeTyping)
        m_beforeTyping = *decal;
    // Half of a number that cannot be is no wish: the decal is as it was.
    m_model.edit(Step::Width, [&](TableDraft& draft) {
        if (width.ok())
            widenDecal(draft, Millimetres{*width});
        else if (draft.decalAt && m_beforeTyping)
            draft.garment().decals[*draft.decalAt] = *m_beforeTyping;
    });
}

void CentrePanel::refresh() {
    refreshPlacements();
    refreshStage();
    refreshWidth();
    refreshLayer();
    m_decals->refresh();
}

void CentrePanel::refreshLayer() {
    const TableDraft& draft = m_model.draft();
    const auto other = overlappedBy(draft);
    m_layer->setVisible(other.has_value());
    if (!other)
        return;
    const QString name = decalWords(draft.garment().decals[*other].decal.content);
    const QString all = *other > *draft.decalAt ? tr("Lay over %1") : tr("Lay under %1");
    m_layer->setText(fitted(all.arg(name), Type::BodyStrong, kLayerWords));
    m_layer->setToolTip(all.arg(name));
    m_layer->setAccessibleName(all.arg(name));
}

void CentrePanel::refreshPlacements() {
    QVector<ChoiceItem> items;
    int chosen = -1;
    const Placement shown = placementShown(m_model.draft(), m_model.style());
    for (const PlacementPreset& preset : presetsOf(m_model.style())) {
        if (preset.placement == shown)
            chosen = static_cast<int>(items.size());
        items.append({.text = words(withCapital(placementName(preset.placement)))});
    }
    bool isNew = items.size() != m_placements->items().size();
    for (int at = 0; !isNew && at < items.size(); ++at)
        isNew = items[at].text != m_placements->items()[at].text;
    if (isNew) {
        m_placements->setItems(items);
        makeTall(m_placements);
        layPlacements();
    }
    if (m_placements->chosenAt() != chosen)
        m_placements->setChosen(chosen);
}

void CentrePanel::refreshStage() {
    const TableDraft& draft = m_model.draft();
    const TableGarment& garment = draft.garment();
    StageScene scene;
    scene.size = words(garment.size);
    scene.side = seenFrom(placementShown(draft, m_model.style()));
    if (const BlankStyle* style = m_model.style()) {
        scene.outline = words(style->outline);
        scene.tellsSize = !garment.size.empty() && style->sizes.size() > 1;
        if (const Colour* colour = style->colour(garment.colour))
            scene.cloth = colourOf(colour->rgb);
    }
    QStringList described{garmentWords(garment, m_model.shop().facts)};
    for (const TableDecal& table : garment.decals) {
        const DecalDraft& decal = table.decal;
        const Film* film = m_model.shop().facts.films.find(decal.film);
        scene.decals.push_back({decal.content, seenFrom(decal.placement), decal.below, decal.aside,
                                decal.width, decal.height, film ? colourOf(film->rgb) : QColor(Qt::gray)});
        described.append(tr("%1, %2, %3 wide, %4 high, %5 below the seam")
                             .arg(decalWords(decal.content), words(placementName(decal.placement)),
                                  millimetres(decal.width), millimetres(decal.height),
                                  millimetres(decal.below)));
    }
    scene.current = draft.decalAt;
    scene.described = described.join(QStringLiteral(". "));
    m_stage->setScene(scene);
}

void CentrePanel::refreshWidth() {
    const TableDecal* decal = m_model.draft().decal();
    m_width->setVisible(decal != nullptr);
    // What is being typed stays as it is typed.
    if (!decal || m_width->editor()->hasFocus())
        return;
    m_width->setText(QString::number(decal->decal.width.value));
}

void CentrePanel::setWhole(bool isWhole) {
    m_isWhole = isWhole;
    m_stage->setMinimumHeight(isWhole ? kWholeStage : 0);
    m_decals->setWhole(isWhole);
    fitMessages();
    arrangePlacements();
}

void CentrePanel::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    fitMessages();
    arrangePlacements();
}

void CentrePanel::fitMessages() {
    if (!m_isWhole)
        m_decals->messages()->setFixedHeight(height() >= kLowPanelHeight ? kMessages : kLowMessages);
}

void CentrePanel::arrangePlacements() {
    const int stageHigh = m_isWhole ? kWholeStage : height() - m_decals->sizeHint().height();
    const bool isBeside = width() >= kBesideWide && stageHigh >= kBesideHigh;
    if (m_isBeside == isBeside) {
        layPlacements();
        return;
    }
    m_isBeside = isBeside;
    if (isBeside)
        m_leftOnStage->insertWidget(0, m_whereTo);
    else
        m_aboveRow->addWidget(m_whereTo);
    m_whereTo->show();
    m_aboveStage->setVisible(!isBeside);
    layPlacements();
}

// Below each other they are as wide as each other.
void CentrePanel::layPlacements() {
    const int wide = std::max(placementWide(), m_whereToParts->itemAt(0)->minimumSize().width());
    m_whereTo->setMinimumWidth(m_isBeside ? wide : 0);
    m_whereTo->setMaximumWidth(m_isBeside ? wide : QWIDGETSIZE_MAX);
    for (QAbstractButton* segment : m_placements->findChildren<QAbstractButton*>())
        segment->setMinimumWidth(m_isBeside ? wide : 0);
    const bool isStacked = m_isBeside || width() < kBesideWide; // the name above the tiles
    m_whereToParts->setDirection(isStacked ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight);
    m_stage->setLeftRoom(m_isBeside ? wide + 2 * kSpace12 : isStacked ? kSpace32 : GarmentStage::kSideRoom);
}

void CentrePanel::takeFocus(Section section) {
    if (section == Section::Placement)
        m_placements->takeFocus();
    else if (section == Section::Width)
        m_width->setFocus(Qt::ShortcutFocusReason);
    else
        m_decals->takeFocus(section);
}

} // namespace holdfast::app

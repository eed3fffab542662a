// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The middle of the fair table: where the decal goes, the garment at true scale, and below it what is cut.
// The placements are at the left of the garment, so that it is large; in a narrow column they are above it.

#include "app/places/fair_table/fair_table_model.h"
#include "app/places/fair_table/garment_stage.h"
#include "app/places/fair_table/table_measures.h"

#include <QWidget>

class QBoxLayout;

namespace holdfast::app {

class Button;
class Choice;
class DecalPanel;
class Field;

class CentrePanel : public QWidget {
    Q_OBJECT

public:
    explicit CentrePanel(FairTableModel& model, QWidget* parent = nullptr);

    void refresh();
    void takeFocus(Section section);
    // As high as it needs, where it scrolls together with what is above it.
    void setWhole(bool isWhole);
    // Its rows break where they are too wide.
    QSize minimumSizeHint() const override { return {kNarrowestColumn, QWidget::minimumSizeHint().height()}; }
    DecalPanel* decals() const { return m_decals; }
    Field* widthField() const { return m_width; }

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void build();
    QWidget* buildPlacements();
    void layOverStage();
    void connectStage();
    void arrangePlacements();
    void layPlacements();
    void refreshPlacements();
    void refreshLayer();
    void refreshStage();
    void refreshWidth();
    void typeWidth(const QString& text);
    void fitMessages();

    FairTableModel& m_model;
    Choice* m_placements = nullptr;
    QWidget* m_whereTo = nullptr; // the placements with their name
    QBoxLayout* m_whereToParts = nullptr;
    QWidget* m_aboveStage = nullptr; // where they are in a narrow column
    QBoxLayout* m_aboveRow = nullptr;
    QBoxLayout* m_leftOnStage = nullptr;
    bool m_isBeside = false;
    Button* m_layer = nullptr; // lays the decal at hand over or under the one it overlaps
    GarmentStage* m_stage = nullptr;
    Field* m_width = nullptr;
    std::optional<TableDecal> m_beforeTyping; // a width
    DecalPanel* m_decals = nullptr;
    bool m_isWhole = false;
};

} // namespace holdfast::app

#pragma once
// The middle of the fair table: where the decal goes, the garment at true scale, and below it what is cut.

#include "app/places/fair_table/fair_table_model.h"
#include "app/places/fair_table/garment_stage.h"
#include "app/places/fair_table/table_measures.h"

#include <QWidget>

namespace holdfast::app {

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
    void connectStage();
    void refreshPlacements();
    void refreshStage();
    void refreshWidth();
    void typeWidth(const QString& text);
    void fitMessages();

    FairTableModel& m_model;
    Choice* m_placements = nullptr;
    GarmentStage* m_stage = nullptr;
    Field* m_width = nullptr;
    std::optional<TableDecal> m_beforeTyping; // a width
    DecalPanel* m_decals = nullptr;
    bool m_isWhole = false;
};

} // namespace holdfast::app

// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The left of the fair table: style, size, how many, colour, with what is on the rail of each.

#include "app/places/fair_table/fair_table_model.h"
#include "app/places/fair_table/table_measures.h"

#include <QWidget>

class QBoxLayout;

namespace holdfast::app {

class Choice;
class EmptyState;
class KeyHint;
class Stepper;
class VerticalScroll;

class PicksPanel : public QWidget {
    Q_OBJECT

public:
    explicit PicksPanel(FairTableModel& model, QWidget* parent = nullptr);

    void refresh();
    void takeFocus(Section section);
    // As high as all of it, where it scrolls together with what is below it.
    void setWhole(bool isWhole);
    // Its tiles take as many rows as its width needs.
    QSize minimumSizeHint() const override { return {kNarrowestColumn, QWidget::minimumSizeHint().height()}; }

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    void build();
    std::vector<const BlankStyle*> offeredStyles() const;
    std::vector<const Colour*> offeredColours() const;
    void refreshStyles();
    void refreshSizes();
    void refreshColours();
    void fitColumns();
    void fitSizes();
    void fitColours();
    bool needsBriefCounts() const;
    QString washedWords(const BlankStock& stock) const;
    int room() const; // for tiles
    void followHeight();

    FairTableModel& m_model;
    Choice* m_styles = nullptr;
    Choice* m_sizes = nullptr;
    Choice* m_colours = nullptr;
    Stepper* m_copies = nullptr;
    KeyHint* m_colourName = nullptr;
    EmptyState* m_noStyles = nullptr;
    QWidget* m_legend = nullptr;
    VerticalScroll* m_all = nullptr; // what is chosen from, once there are styles
    QBoxLayout* m_sizeRow = nullptr;
    bool m_isWhole = false;
    bool m_areCountsBrief = false; // of the colours
};

} // namespace holdfast::app

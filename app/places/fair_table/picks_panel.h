#pragma once
// The left of the fair table: style, size, how many, colour, with what is on the rail of each.

#include "app/places/fair_table/fair_table_model.h"

#include <QWidget>

namespace holdfast::app {

class Choice;
class EmptyState;
class KeyHint;
class Stepper;

class PicksPanel : public QWidget {
    Q_OBJECT

public:
    explicit PicksPanel(FairTableModel& model, QWidget* parent = nullptr);

    void refresh();
    void takeFocus(Section section);

private:
    void build();
    void refreshStyles();
    void refreshSizes();
    void refreshColours();
    void narrowSizes();

    FairTableModel& m_model;
    Choice* m_styles = nullptr;
    Choice* m_sizes = nullptr;
    Choice* m_colours = nullptr;
    Stepper* m_copies = nullptr;
    KeyHint* m_colourName = nullptr;
    EmptyState* m_noStyles = nullptr;
    QWidget* m_legend = nullptr;
    QWidget* m_all = nullptr; // what is chosen from, once there are styles
};

} // namespace holdfast::app

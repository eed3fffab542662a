// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Figures: what came back and why, how long decals hold, whether promises were kept, what fairs brought,
// where the film went. Each figure is a question in words with its answer, its chart, its table, and what to
// beware of.

#include "app/desk/figures_beside.h"
#include "app/desk/place.h"
#include "app/places/figures/figure_sheet.h"

class QBoxLayout;
class QStackedWidget;

namespace holdfast::app {

class Button;
class Card;
class Choice;
class EmptyState;
class FigureRows;
class HoldingChart;
class Label;
class MonthsChart;
class VerticalScroll;

class FiguresPlace : public Place {
    Q_OBJECT

public:
    explicit FiguresPlace(ShopDesk& desk, QWidget* parent = nullptr);

    QString subtitle() const override;
    QWidget* headerTools() override;
    void opened() override;
    void turnTo(const SlipTarget& matter) override;
    void ask(FigureQuestion question);
    void takeKeyboard() override;
    QSize minimumSizeHint() const override;

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    QWidget* makeQuestions();
    QWidget* makeSheet();
    void refresh();
    void read();
    void take(const ShopFigures& figures);
    void arrange();
    void fillQuestions();
    void showSheet();
    FigureQuestion question() const;
    bool isEmpty() const;

    FiguresBeside m_beside;
    std::optional<FiguresShown> m_shown;
    bool m_isStale = true;
    int m_span = 1; // of kSpans
    FigureQuestion m_question = FigureQuestion::CameBack;
    QStackedWidget* m_pages = nullptr;
    EmptyState* m_empty = nullptr;
    QBoxLayout* m_row = nullptr; // the questions and a sheet, side by side or one above the other
    Card* m_questionCard = nullptr;
    VerticalScroll* m_questionScroll = nullptr;
    Choice* m_questions = nullptr;
    Choice* m_spans = nullptr;
    Choice* m_by = nullptr;
    Button* m_print = nullptr;
    Button* m_count = nullptr;
    Card* m_sheet = nullptr;
    Label* m_whole = nullptr;
    HoldingChart* m_holding = nullptr;
    MonthsChart* m_months = nullptr;
    FigureRows* m_rows = nullptr;
    Label* m_note = nullptr;
    QWidget* m_tools = nullptr;
};

} // namespace holdfast::app

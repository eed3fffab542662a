// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// The fair table: an order from first key to last in half a minute, price and promised day in sight from the
// first choice. Letters jump to a section, Enter takes the order or goes to what is still missing. On a
// narrow or low window what is chosen is one column that scrolls; what is said of the order is below it, and
// the bill with its keys next to it, always in reach; on the narrowest window the bill is in that column,
// too.

#include "app/desk/place.h"
#include "app/places/fair_table/fair_table_model.h"

class QBoxLayout;

namespace holdfast::app {

class CentrePanel;
class PicksPanel;
class SumsPanel;
class TodayTools;
class VerticalScroll;

class FairTablePlace : public Place {
    Q_OBJECT

public:
    explicit FairTablePlace(ShopDesk& desk, QWidget* parent = nullptr);
    ~FairTablePlace() override;

    QString subtitle() const override;
    QWidget* headerTools() override;
    void opened() override;
    void takeKeyboard() override;
    QSize minimumSizeHint() const override { return {390, 220}; } // what does not fit scrolls
    void turnTo(const SlipTarget& matter) override;
    QVector<PlaceKey> moreKeys() const override;
    OwnSteps ownSteps() const override;
    void undoOwn() override { m_model.undo(); }
    void redoOwn() override { m_model.redo(); }

    FairTableModel& model() { return m_model; }

protected:
    void keyPressEvent(QKeyEvent* event) override;
    void hideEvent(QHideEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

private:
    // What the last Enter asked for.
    struct Asked {
        Section section;
        bool isQuotation;
    };
    void connectAll();
    void arrange();
    void arrangeMessages(bool isNarrow);
    void giveMessagesRoom();
    void arrangeBill(bool isNarrow);
    void refresh();
    void take(bool isQuotation);
    void takeFocus(Section section);
    void sayMissing(const Missing& missing);

    FairTableModel m_model;
    VerticalScroll* m_left = nullptr; // what is chosen; all but the bill
    QBoxLayout* m_leftParts = nullptr;
    QBoxLayout* m_leftSide = nullptr; // that, and below it what is said of the order
    int m_mostSaid = 0;               // the height of that, at most, since this order was begun
    PicksPanel* m_picks = nullptr;
    CentrePanel* m_centre = nullptr;
    SumsPanel* m_sums = nullptr;
    TodayTools* m_today = nullptr;
    std::optional<Asked> m_asked;
};

} // namespace holdfast::app

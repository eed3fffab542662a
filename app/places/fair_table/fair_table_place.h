#pragma once
// The fair table: an order from first key to last in half a minute, price and promised day in sight from the
// first choice. Letters jump to a section, Enter takes the order or goes to what is still missing.

#include "app/desk/place.h"
#include "app/places/fair_table/fair_table_model.h"

namespace holdfast::app {

class CentrePanel;
class PicksPanel;
class SumsPanel;
class TodayTools;

class FairTablePlace : public Place {
    Q_OBJECT

public:
    explicit FairTablePlace(ShopDesk& desk, QWidget* parent = nullptr);
    ~FairTablePlace() override;

    QString subtitle() const override;
    QWidget* headerTools() override;
    void opened() override;
    void turnTo(const Matter& matter) override;

    FairTableModel& model() { return m_model; }

protected:
    bool event(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void hideEvent(QHideEvent* event) override;

private:
    void refresh();
    void take(bool isQuotation);
    void takeFocus(Section section);
    void sayMissing(const Missing& missing);

    FairTableModel m_model;
    PicksPanel* m_picks = nullptr;
    CentrePanel* m_centre = nullptr;
    SumsPanel* m_sums = nullptr;
    TodayTools* m_today = nullptr;
    std::optional<Section> m_asked; // what the last Enter asked for
};

} // namespace holdfast::app

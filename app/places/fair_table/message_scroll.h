#pragma once
// What is said at once, as banners below each other: as high as they need, up to a third of the table, then
// it scrolls. The worst comes first and is always seen.

#include "app/places/fair_table/table_messages.h"
#include "app/widgets/vertical_scroll.h"

#include <vector>

namespace holdfast::app {

class Banner;

class MessageScroll : public VerticalScroll {
    Q_OBJECT

public:
    explicit MessageScroll(QWidget* parent = nullptr);

    void show(const std::vector<TableMessage>& messages, ShopDesk& desk);

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return {120, 0}; }

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    int neededHeight(int width) const;

    std::vector<Banner*> m_banners;
    std::vector<TableMessage> m_messages;
};

} // namespace holdfast::app

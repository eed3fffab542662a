#include "app/places/fair_table/message_scroll.h"

#include "app/desk/formats.h"
#include "app/theme/measures.h"
#include "app/widgets/banner.h"

#include <QBoxLayout>

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr int kHighest = 150; // more scrolls: the garment keeps its room

} // namespace

MessageScroll::MessageScroll(QWidget* parent)
    : VerticalScroll(parent) {
    setObjectName(QStringLiteral("messages"));
    setAccessibleName(tr("What is to be known of this order"));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    column()->setSpacing(kSpace8);
    column()->addStretch();
}

void MessageScroll::show(const std::vector<TableMessage>& messages, ShopDesk& desk) {
    m_messages = messages;
    while (m_banners.size() > messages.size()) {
        m_banners.back()->hide();
        m_banners.back()->deleteLater(); // its button may have brought us here
        m_banners.pop_back();
    }
    while (m_banners.size() < messages.size()) {
        auto* banner = new Banner;
        banner->setObjectName(QStringLiteral("message-%1").arg(m_banners.size()));
        const std::size_t at = m_banners.size();
        connect(banner, &Banner::acted, this, [this, at, &desk] {
            if (at < m_messages.size() && m_messages[at].act)
                desk.free(*m_messages[at].act, m_messages[at].matter);
        });
        column()->insertWidget(static_cast<int>(at), banner);
        m_banners.push_back(banner);
    }
    for (std::size_t at = 0; at < messages.size(); ++at) {
        const TableMessage& message = messages[at];
        m_banners[at]->set(message.tone, message.lead, message.text, message.iconName);
        m_banners[at]->setAction(message.act ? words(freeingWords(*message.act)) : QString());
    }
    updateGeometry();
}

int MessageScroll::neededHeight(int width) const {
    int high = 0;
    for (const Banner* banner : m_banners)
        high += banner->heightForWidth(width) + (high > 0 ? kSpace8 : 0);
    return high;
}

QSize MessageScroll::sizeHint() const {
    const int wide = viewport()->width() > 100 ? viewport()->width() : 444;
    return {wide, std::min(kHighest, neededHeight(wide))};
}

void MessageScroll::resizeEvent(QResizeEvent* event) {
    VerticalScroll::resizeEvent(event);
    updateGeometry();
}

} // namespace holdfast::app

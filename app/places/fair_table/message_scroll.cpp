// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/fair_table/message_scroll.h"

#include "app/desk/formats.h"
#include "app/places/fair_table/table_measures.h"
#include "app/theme/measures.h"
#include "app/widgets/banner.h"
#include "app/widgets/label.h"

#include <QBoxLayout>

namespace holdfast::app {

namespace {

QString actionWords(const TableMessage& message) {
    if (message.act)
        return words(freeingWords(*message.act));
    if (message.spot)
        return MessageScroll::tr("Move the decal");
    if (message.makesAgain)
        return MessageScroll::tr("Make it again");
    switch (message.offer) {
    case TableMessage::Offer::SameAgain:
        return MessageScroll::tr("Add it again");
    case TableMessage::Offer::TeamList:
        return MessageScroll::tr("Add a team");
    case TableMessage::Offer::None:
        break;
    }
    return {};
}

} // namespace

MessageScroll::MessageScroll(QWidget* parent)
    : VerticalScroll(parent) {
    setObjectName(QStringLiteral("messages"));
    setAccessibleName(tr("What to know about this order"));
    m_nothing = new Label(tr("Whether the film fits, and what is in the way, is shown here."), Type::Small,
                          &Tokens::ink3);
    m_nothing->wrapped();
    column()->setSpacing(kSpace8);
    column()->addWidget(m_nothing);
    column()->addStretch();
}

void MessageScroll::show(const std::vector<TableMessage>& messages, ShopDesk& desk) {
    m_messages = messages;
    m_nothing->setVisible(messages.empty());
    while (m_banners.size() > messages.size()) {
        m_banners.back()->hide();
        m_banners.back()->deleteLater(); // its button may have brought us here
        m_banners.pop_back();
    }
    while (m_banners.size() < messages.size()) {
        auto* banner = new Banner;
        banner->setObjectName(QStringLiteral("message-%1").arg(m_banners.size()));
        banner->setTargetHeight(kStallTarget);
        const std::size_t at = m_banners.size();
        connect(banner, &Banner::acted, this, [this, at, &desk] {
            if (at >= m_messages.size())
                return;
            const TableMessage message = m_messages[at]; // what follows from it says others
            if (message.act)
                desk.free(*message.act, message.matter);
            else if (message.spot)
                emit spotTaken(message.garment, message.decal, *message.spot);
            else if (message.makesAgain)
                emit makingAgainAsked(message.garment);
            else if (message.offer == TableMessage::Offer::SameAgain)
                emit sameAgainAsked();
            else if (message.offer == TableMessage::Offer::TeamList)
                emit teamListAsked();
        });
        column()->insertWidget(static_cast<int>(at) + 1, banner); // under what is said when there is nothing
        banner->show(); // at once: its height is asked for before it is laid
        m_banners.push_back(banner);
    }
    bool hasKey = false;
    for (std::size_t at = 0; at < messages.size(); ++at) {
        const TableMessage& message = messages[at];
        m_banners[at]->set(message.tone, message.lead, message.text, message.iconName);
        m_banners[at]->setAction(actionWords(message));
        // One key, for the first one there is.
        const bool takesKey = (message.spot || message.makesAgain) && !message.act;
        using Offer = TableMessage::Offer;
        m_banners[at]->setActionKey(message.offer == Offer::SameAgain  ? QKeySequence(Qt::Key_M)
                                    : message.offer == Offer::TeamList ? QKeySequence(Qt::Key_V)
                                    : takesKey && !hasKey              ? QKeySequence(Qt::Key_Y)
                                                                       : QKeySequence());
        hasKey = hasKey || takesKey;
    }
}

int MessageScroll::neededHeight() {
    column()->invalidate();
    return column()->totalHeightForWidth(viewport()->width());
}

} // namespace holdfast::app

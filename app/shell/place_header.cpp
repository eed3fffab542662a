#include "app/shell/place_header.h"

#include "app/theme/measures.h"
#include "app/widgets/button.h"
#include "app/widgets/label.h"

#include <QBoxLayout>

namespace holdfast::app {

PlaceHeader::PlaceHeader(QWidget* parent)
    : QWidget(parent) {
    setFixedHeight(kHeaderHeight);
    m_title = new Label({}, Type::PlaceTitle);
    m_title->setObjectName(QStringLiteral("placeTitle"));
    m_title->setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Preferred);
    m_subtitle = new ElidingLabel({}, Type::Body, &Tokens::ink2);
    m_subtitle->setObjectName(QStringLiteral("placeSubtitle"));
    m_subtitle->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Preferred);
    m_row = new QHBoxLayout(this);
    m_row->setContentsMargins(kSpace20, 0, kSpace20, 0);
    m_row->setSpacing(kSpace16);
    m_row->addWidget(m_title);
    m_row->addWidget(m_subtitle, 1);
    m_back = new Button({}, Button::Kind::Quiet);
    m_back->setObjectName(QStringLiteral("wayBack"));
    m_back->setKey(QKeySequence(Qt::ALT | Qt::Key_Left));
    m_back->hide();
    connect(m_back, &Button::clicked, this, &PlaceHeader::backAsked);
    m_row->addWidget(m_back);
}

void PlaceHeader::setTitle(const QString& title) {
    m_title->setText(title);
}

void PlaceHeader::setSubtitle(const QString& subtitle) {
    m_subtitle->setText(subtitle);
}

void PlaceHeader::setWayBack(const QString& place) {
    m_back->setText(tr("Back to %1").arg(place));
    m_back->setVisible(!place.isEmpty());
}

void PlaceHeader::setTools(QWidget* tools) {
    if (m_tools == tools)
        return;
    if (m_tools != nullptr)
        m_tools->hide();
    m_tools = tools;
    if (tools == nullptr)
        return;
    if (m_row->indexOf(tools) < 0)
        m_row->addWidget(tools);
    tools->show();
}

bool PlaceHeader::isOfTools(const QWidget* widget) const {
    return m_tools != nullptr && (m_tools == widget || m_tools->isAncestorOf(widget));
}

} // namespace holdfast::app

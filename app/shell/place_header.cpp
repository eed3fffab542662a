// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/place_header.h"

#include "app/theme/measures.h"
#include "app/widgets/button.h"
#include "app/widgets/flow_layout.h"
#include "app/widgets/label.h"

#include <QBoxLayout>
#include <QEvent>

namespace holdfast::app {

namespace {

constexpr int kLeastSubtitle = 40; // elided, with the whole in its tip

// As narrow as they can be in one row.
int shortestRow(const QWidget& tools) {
    const auto* flow = qobject_cast<const FlowLayout*>(tools.layout());
    return flow != nullptr ? flow->shortestLine() : tools.sizeHint().width();
}

} // namespace

PlaceHeader::PlaceHeader(QWidget* parent)
    : QWidget(parent) {
    m_title = new Label({}, Type::PlaceTitle);
    m_title->setObjectName(QStringLiteral("placeTitle"));
    m_title->setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Preferred);
    m_subtitle = new ElidingLabel({}, Type::Body, &Tokens::ink2);
    m_subtitle->setObjectName(QStringLiteral("placeSubtitle"));
    m_subtitle->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Preferred);
    auto* rows = new QVBoxLayout(this);
    rows->setContentsMargins(kSpace20, 0, kSpace20, 0);
    rows->setSpacing(0);
    m_row = new QHBoxLayout;
    m_row->setSpacing(kSpace16);
    m_second = new QHBoxLayout;
    m_second->setSpacing(kSpace16);
    rows->addLayout(m_row, 1);
    rows->addLayout(m_second);
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
    layTools();
    tools->show();
}

bool PlaceHeader::fitsOneRow(int width) const {
    return m_tools == nullptr || shortestRow(*m_tools) <= roomForTools(width);
}

// In the row of the title.
int PlaceHeader::roomForTools(int width) const {
    const int back = m_back->isHidden() ? 0 : m_back->sizeHint().width() + kSpace16;
    const int title = m_title->sizeHint().width() + kSpace16 + kLeastSubtitle + kSpace16;
    return width - title - back - 2 * kSpace20;
}

int PlaceHeader::heightForWidth(int width) const {
    return kHeaderHeight + (fitsOneRow(width) ? 0 : toolsHeight(width) + kSpace8);
}

// Where they are more than one row is wide, they go on in the next.
int PlaceHeader::toolsHeight(int width) const {
    const QLayout* row = m_tools->layout();
    return row != nullptr && row->hasHeightForWidth() ? row->heightForWidth(width - 2 * kSpace20)
                                                      : m_tools->sizeHint().height();
}

void PlaceHeader::layTools() {
    if (m_tools == nullptr)
        return;
    const bool isOneRow = fitsOneRow(width());
    QHBoxLayout* home = isOneRow ? m_row : m_second;
    if (home->indexOf(m_tools) < 0) {
        m_row->removeWidget(m_tools);
        m_second->removeWidget(m_tools);
        home->addWidget(m_tools);
    }
    // Next to the title they are not to go on in a second row; the words after the title give way.
    const int shortest = shortestRow(*m_tools);
    m_tools->setMinimumWidth(isOneRow ? shortest : 0);
    const bool isShort = isOneRow && m_tools->sizeHint().width() > roomForTools(width());
    m_tools->setMaximumWidth(isShort ? shortest : QWIDGETSIZE_MAX);
    m_second->setContentsMargins(0, 0, 0, isOneRow ? 0 : kSpace8);
}

void PlaceHeader::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    layTools();
}

// Its tools became wider or narrower.
bool PlaceHeader::event(QEvent* event) {
    if (event->type() == QEvent::LayoutRequest) {
        layTools();
        if (heightForWidth(width()) != height())
            emit heightChanged();
    }
    return QWidget::event(event);
}

bool PlaceHeader::isOfTools(const QWidget* widget) const {
    return m_tools != nullptr && (m_tools == widget || m_tools->isAncestorOf(widget));
}

} // namespace holdfast::app

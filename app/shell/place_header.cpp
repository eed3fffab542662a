#include "app/shell/place_header.h"

#include "app/theme/measures.h"
#include "app/widgets/button.h"
#include "app/widgets/label.h"

#include <QBoxLayout>

namespace holdfast::app {

namespace {

constexpr int kShellTarget = 32;
constexpr int kNarrowHeader = 1'150;

} // namespace

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
    m_find = shellButton(tr("Find"), "search", "headerFind", QKeySequence(Qt::CTRL | Qt::Key_K));
    connect(m_find, &Button::clicked, this, &PlaceHeader::findAsked);
    m_keys = shellButton(tr("Keys"), "", "headerKeys", QKeySequence(Qt::Key_F1));
    connect(m_keys, &Button::clicked, this, &PlaceHeader::keysAsked);
}

// The key itself is the window's; its cap is shown here.
Button* PlaceHeader::shellButton(const QString& words, const char* icon, const char* name,
                                 const QKeySequence& keys) {
    auto* button = new Button(words, QString::fromLatin1(icon), Button::Kind::Quiet);
    button->setObjectName(QString::fromLatin1(name));
    button->showKey(keys);
    button->setTargetHeight(kShellTarget);
    m_row->addWidget(button);
    return button;
}

// Where the room is short the words go and the caps stay.
void PlaceHeader::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    const bool isNarrow = width() < kNarrowHeader;
    m_find->setText(isNarrow ? QString() : tr("Find"));
    m_keys->setText(isNarrow ? QString() : tr("Keys"));
    m_find->setAccessibleName(tr("Find"));
    m_keys->setAccessibleName(tr("Keys"));
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
        m_row->insertWidget(m_row->indexOf(m_find), tools);
    tools->show();
}

bool PlaceHeader::isOfTools(const QWidget* widget) const {
    return m_tools != nullptr && (m_tools == widget || m_tools->isAncestorOf(widget));
}

} // namespace holdfast::app

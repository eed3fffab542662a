// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/command_finder.h"

#include "app/shell/finder_model.h"
#include "app/theme/measures.h"
#include "app/theme/stitch.h"
#include "app/widgets/field.h"
#include "app/widgets/label.h"

#include <QApplication>
#include <QBoxLayout>
#include <QKeyEvent>
#include <QLineEdit>
#include <QListView>
#include <QPainter>

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr int kWidth = 700;
constexpr int kHeight = 480;
constexpr int kPage = 8;

} // namespace

CommandFinder::CommandFinder(ShopDesk& desk, QWidget* parent)
    : QWidget(parent)
    , m_desk(desk)
    , m_line(new Field)
    , m_list(new QListView)
    , m_model(new FinderModel(this)) {
    setObjectName(QStringLiteral("commandFinder"));
    setAccessibleName(tr("Find anything"));
    m_line->setObjectName(QStringLiteral("finderLine"));
    m_line->setIconName(QStringLiteral("search"));
    m_line->setPlaceholder(tr("Order, customer, decal, roll, lot, place or action"));
    m_line->showKey(QKeySequence(Qt::Key_Escape));
    m_line->editor()->installEventFilter(this);
    connect(m_line, &Field::edited, this, &CommandFinder::search);
    m_list->setObjectName(QStringLiteral("finderList"));
    m_list->setAccessibleName(tr("What was found"));
    m_list->setModel(m_model);
    m_list->setItemDelegate(new FinderDelegate(m_list));
    m_list->setFocusPolicy(Qt::NoFocus);
    m_list->setFrameShape(QFrame::NoFrame);
    m_list->setUniformItemSizes(true);
    m_list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_list->setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    connect(m_list, &QListView::clicked, this, &CommandFinder::choose);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(2, kSpace16, 2, kSpace8);
    column->setSpacing(kSpace12);
    auto* line = new QHBoxLayout;
    line->setContentsMargins(kSpace16, 0, kSpace16, 0);
    line->addWidget(m_line);
    column->addLayout(line);
    column->addWidget(m_list, 1);
    m_nothing = new Label(tr("Nothing is called that. Try a number, a name, a shade or a decal."), Type::Body,
                          &Tokens::ink2);
    m_nothing->setObjectName(QStringLiteral("finderNothing"));
    m_nothing->setAlignment(Qt::AlignHCenter | Qt::AlignTop);
    column->addWidget(m_nothing, 1);
    hide();
}

void CommandFinder::open(const QString& typed) {
    if (!isOpen())
        m_before = QApplication::focusWidget();
    show();
    raise();
    m_line->setText(typed);
    m_line->editor()->setFocus(Qt::ShortcutFocusReason);
    search(typed);
}

void CommandFinder::close() {
    if (!isOpen())
        return;
    const QWidget* focused = QApplication::focusWidget();
    const bool hadKeyboard = focused == nullptr || isAncestorOf(focused);
    hide();
    if (hadKeyboard && !m_before.isNull() && m_before->isVisible())
        m_before->setFocus(Qt::OtherFocusReason);
}

void CommandFinder::place(const QRect& room) {
    const int width = std::min(kWidth, room.width() - 2 * kGutter);
    const int height = std::min(kHeight, room.height() - kGutter);
    setGeometry(room.left() + (room.width() - width) / 2, room.top(), width, height);
}

void CommandFinder::search(const QString& typed) {
    m_model->setEntries(findEntries(m_desk, typed));
    m_list->setCurrentIndex(m_model->index(0));
    m_list->scrollToTop();
    const bool isEmpty = m_model->rowCount() == 0;
    m_list->setVisible(!isEmpty);
    m_nothing->setVisible(isEmpty);
}

void CommandFinder::move(int by) {
    const int rows = m_model->rowCount();
    if (rows == 0)
        return;
    const int row = std::clamp(m_list->currentIndex().row() + by, 0, rows - 1);
    m_list->setCurrentIndex(m_model->index(row));
}

void CommandFinder::choose() {
    const FinderEntry* entry = m_model->entryAt(m_list->currentIndex().row());
    if (entry == nullptr)
        return;
    const FinderTarget target = entry->target;
    close();
    emit chosen(target);
}

bool CommandFinder::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() != QEvent::KeyPress)
        return QWidget::eventFilter(watched, event);
    switch (static_cast<QKeyEvent*>(event)->key()) {
    case Qt::Key_Down:
        move(1);
        return true;
    case Qt::Key_Up:
        move(-1);
        return true;
    case Qt::Key_PageDown:
        move(kPage);
        return true;
    case Qt::Key_PageUp:
        move(-kPage);
        return true;
    case Qt::Key_Return:
    case Qt::Key_Enter:
        choose();
        return true;
    case Qt::Key_Escape:
        close();
        return true;
    default:
        return QWidget::eventFilter(watched, event);
    }
}

bool CommandFinder::focusNextPrevChild(bool next) {
    move(next ? 1 : -1);
    return true;
}

void CommandFinder::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const Tokens& dyes = tokens();
    paintBox(painter, rect(), kCardRadius, dyes.card, dyes.edge, 1.2);
}

} // namespace holdfast::app

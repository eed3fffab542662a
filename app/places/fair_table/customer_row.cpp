// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/fair_table/customer_row.h"

#include "app/desk/formats.h"
#include "app/places/fair_table/customer_list.h"
#include "app/places/fair_table/table_measures.h"
#include "app/theme/measures.h"
#include "app/theme/type.h"
#include "app/widgets/field.h"
#include "db/tables/order_book.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLineEdit>

#include <cmath>

namespace holdfast::app {

namespace {

constexpr int kMostShown = 4;
constexpr int kFewestDigits = 3; // of a number that is looked for

void follow(Field* field, const std::string& text) {
    if (field->editor()->text().toStdString() != text)
        field->setText(words(text));
}

// Digits, with the signs that people write between them.
bool isTelephone(const QString& text) {
    int digits = 0;
    for (const QChar sign : text) {
        if (sign.isDigit())
            ++digits;
        else if (!sign.isSpace() && !QStringLiteral("+-()/.").contains(sign))
            return false;
    }
    return digits >= kFewestDigits;
}

// As wide as a telephone number is long.
int phoneWidth() {
    constexpr int kBesideText = 32;
    return static_cast<int>(std::ceil(widthOf(QStringLiteral("07700 900 000"), Type::BodyStrong))) +
           kBesideText;
}

} // namespace

CustomerRow::CustomerRow(FairTableModel& model, QWidget* parent)
    : QWidget(parent)
    , m_model(model)
    , m_name(new Field(tr("For")))
    , m_phone(new Field) {
    m_name->setObjectName(QStringLiteral("customerName"));
    m_name->setKey(Qt::Key_O);
    m_name->editor()->setMaxLength(200);
    m_phone->setObjectName(QStringLiteral("customerPhone"));
    m_phone->setPlaceholder(tr("Phone"));
    m_phone->setFixedWidth(phoneWidth());
    m_phone->editor()->setMaxLength(80);
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(kSpace8);
    row->addWidget(m_name, 1, Qt::AlignTop);
    row->addWidget(m_phone, 0, Qt::AlignTop);
    for (Field* field : {m_name, m_phone}) {
        field->setFixedHeight(kStallTarget); // what is wrong is said below the row
        field->editor()->installEventFilter(this);
    }

    connect(m_name, &Field::edited, this, [this](const QString& text) {
        m_model.edit(Step::Name, [&](TableDraft& draft) { typeName(draft, text.toStdString()); });
        search(text, m_name);
    });
    connect(m_phone, &Field::edited, this, [this](const QString& text) {
        m_model.edit(Step::Phone, [&](TableDraft& draft) { draft.customerPhone = text.toStdString(); });
        if (!m_model.draft().customer)
            search(text, m_phone);
    });
    for (Field* field : {m_name, m_phone})
        connect(field, &Field::finished, this, [this] { m_model.endStep(); });
}

void CustomerRow::search(const QString& text, Field* below) {
    if (!m_list) {
        m_list = new CustomerList(window() == this ? this : parentWidget()->window());
        connect(m_list, &CustomerList::picked, this, [this](const Customer& customer) {
            m_model.endStep();
            m_model.edit(Step::Choice, [&](TableDraft& draft) { chooseCustomer(draft, customer); });
        });
    }
    m_listBelow = below;
    std::vector<Customer> customers;
    if (!text.trimmed().isEmpty()) {
        auto found = m_model.desk().file().read([&](db::Connection& connection) {
            return db::findCustomers(connection, plain(text), kMostShown);
        });
        if (m_model.desk().done(found))
            customers = std::move(*found);
    }
    m_list->show(customers);
    placeList();
}

void CustomerRow::placeList() {
    // Clear of the field and its focus ring: below it, else above it.
    QWidget* ground = m_list->parentWidget();
    const QSize size(width(), m_list->sizeHint().height());
    constexpr int kClear = kFocusRoom + 2;
    const QPoint field = m_listBelow->mapTo(ground, QPoint(0, 0));
    const int left = mapTo(ground, QPoint(0, 0)).x();
    int top = field.y() + m_listBelow->height() + kClear;
    if (top + size.height() > ground->height())
        top = field.y() - kClear - size.height();
    m_list->setGeometry(QRect(QPoint(left, top), size));
}

bool CustomerRow::eventFilter(QObject* watched, QEvent* event) {
    if (m_list && m_list->isVisible()) {
        if (event->type() == QEvent::FocusOut)
            m_list->hide();
        else if (event->type() == QEvent::KeyPress && takeListKey(static_cast<QKeyEvent*>(event)))
            return true;
    }
    return QWidget::eventFilter(watched, event);
}

bool CustomerRow::takeListKey(QKeyEvent* event) {
    const bool isEnter = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
    if (isEnter && m_list->chosenAt() < 0 && m_list->count() == 1 && isNumberAlone()) {
        m_list->pickFirst();
        return true;
    }
    return m_list->takeKey(event);
}

// Only a telephone number was typed: it means the customer it belongs to.
bool CustomerRow::isNumberAlone() const {
    const TableDraft& draft = m_model.draft();
    if (m_listBelow == m_name)
        return isTelephone(m_name->text());
    return draft.customerName.empty() && isTelephone(m_phone->text());
}

void CustomerRow::refresh() {
    follow(m_name, m_model.draft().customerName);
    // A name takes the room of the key's cap.
    m_name->showKey(m_model.draft().customerName.empty() ? QKeySequence(Qt::Key_O) : QKeySequence());
    if (!m_name->editor()->hasFocus())
        m_name->editor()->setCursorPosition(0); // a long name is read from its beginning
    follow(m_phone, m_model.draft().customerPhone);
}

void CustomerRow::takeFocus(Section section) {
    Field* field = section == Section::Phone ? m_phone : m_name;
    field->setFocus(Qt::ShortcutFocusReason);
    field->selectAll();
}

void CustomerRow::setError(Section section, const QString& words) {
    m_name->setError(section == Section::Name ? words : QString());
    m_phone->setError(section == Section::Phone ? words : QString());
}

} // namespace holdfast::app

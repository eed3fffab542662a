#include "app/places/fair_table/customer_row.h"

#include "app/desk/formats.h"
#include "app/places/fair_table/customer_list.h"
#include "app/theme/measures.h"
#include "app/widgets/field.h"
#include "db/tables/order_book.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLineEdit>

namespace holdfast::app {

namespace {

constexpr int kMostShown = 4;
constexpr int kPhoneWidth = 130;

void follow(Field* field, const std::string& text) {
    if (field->editor()->text().toStdString() != text)
        field->setText(words(text));
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
    m_phone->setFixedWidth(kPhoneWidth);
    m_phone->editor()->setMaxLength(80);
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(kSpace8);
    row->addWidget(m_name, 1, Qt::AlignTop);
    row->addWidget(m_phone, 0, Qt::AlignTop);
    for (Field* field : {m_name, m_phone})
        field->editor()->installEventFilter(this);

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
    QWidget* ground = m_list->parentWidget();
    const QSize size(width(), m_list->sizeHint().height());
    QPoint at = mapTo(ground, QPoint(0, m_listBelow->editor()->geometry().bottom() + 6));
    if (at.y() + size.height() > ground->height())
        at = mapTo(ground, QPoint(0, -size.height() - 4));
    m_list->setGeometry(QRect(at, size));
}

bool CustomerRow::eventFilter(QObject* watched, QEvent* event) {
    if (m_list && m_list->isVisible()) {
        if (event->type() == QEvent::FocusOut)
            m_list->hide();
        else if (event->type() == QEvent::KeyPress && m_list->takeKey(static_cast<QKeyEvent*>(event)))
            return true;
    }
    return QWidget::eventFilter(watched, event);
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

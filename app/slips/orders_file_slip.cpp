// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/slips/orders_file_slip.h"

#include "app/desk/formats.h"
#include "app/desk/window_language.h"
#include "app/slips/option_list.h"
#include "app/slips/order_lettering.h"
#include "app/slips/orders_file_words.h"
#include "app/slips/quiet_wait.h"
#include "app/slips/slip_makers.h"
#include "app/widgets/banner.h"
#include "app/widgets/button.h"
#include "app/widgets/field.h"
#include "app/widgets/label.h"
#include "app/widgets/progress_beads.h"
#include "db/csv/order_file_reading.h"
#include "db/tables/order_file_rows.h"

#include <QDragEnterEvent>
#include <QDropEvent>
#include <QFileDialog>
#include <QFileInfo>
#include <QMimeData>
#include <QUrl>

#include <algorithm>

namespace holdfast::app {

namespace {

constexpr int kWholeBar = 1000;

std::string partOf(OrderColumn column) {
    return "column" + std::to_string(static_cast<int>(column));
}

std::string itemPart(std::size_t at) {
    return "item" + std::to_string(at);
}

QString droppedFile(const QMimeData* dropped) {
    const QList<QUrl> urls = dropped->urls();
    return urls.size() == 1 && urls.front().isLocalFile() ? urls.front().toLocalFile() : QString();
}

} // namespace

OrdersFileSlip::OrdersFileSlip(ShopDesk& shopDesk, QWidget* parent)
    : FormSlip(shopDesk, tr("Take orders from a file"),
               tr("The file of a web shop: comma-separated values, a line for each garment of an order. What "
                  "its columns are is said once."),
               parent)
    , m_found(new Banner)
    , m_orders(new OptionList(tr("Orders of the file")))
    , m_progress(new ProgressBeads)
    , m_stop(new Button(tr("Stop"), QStringLiteral("close"))) {
    setAcceptDrops(true);
    addFileParts();
    addColumnParts();
    form().add(m_found);
    form().add(m_orders);
    form().add(m_progress);
    form().add(m_stop);
    m_found->setObjectName(QStringLiteral("foundOrders"));
    m_orders->setObjectName(QStringLiteral("ordersOfFile"));
    m_orders->showAll();
    m_stop->setObjectName(QStringLiteral("stopOrders"));
    connect(m_stop, &QAbstractButton::clicked, this, [this] {
        m_opening.stop();
        m_reading.stop();
        m_taking.stop();
    });
    connect(&form(), &Form::edited, this, &OrdersFileSlip::forgetOrders);
    endWork();
    forgetFile();
}

OrdersFileSlip::~OrdersFileSlip() = default;

void OrdersFileSlip::addFileParts() {
    auto* path = form().line("path", tr("File of orders"));
    path->setPlaceholder(tr("the whole path"));
    auto* browse = new Button(tr("Choose a file"), QStringLiteral("search"));
    browse->setObjectName(QStringLiteral("browseFile"));
    connect(browse, &QAbstractButton::clicked, this, &OrdersFileSlip::choosePath);
    connect(path, &Field::edited, this, &OrdersFileSlip::forgetFile);
    form().add(browse);
    form().line("shop", tr("Name of the web shop"));
}

void OrdersFileSlip::addColumnParts() {
    for (const OrderColumn column : kOrderColumns)
        form().list(partOf(column), words(columnWords(column)), {});
    form().alsoNamed("columns", partOf(OrderColumn::Reference));
}

bool OrdersFileSlip::isBusy() const {
    return m_opening.isUnderWay() || m_reading.isUnderWay() || m_taking.isUnderWay();
}

void OrdersFileSlip::choosePath() {
    const QFileInfo now(form().text("path"));
    const QString chosen = QFileDialog::getOpenFileName(this, tr("The web shop’s file"), now.absolutePath(),
                                                        tr("Text files (*.csv *.txt *.tsv);;All files (*)"),
                                                        nullptr, QFileDialog::DontUseNativeDialog);
    if (!chosen.isEmpty())
        setPath(chosen);
}

void OrdersFileSlip::setPath(const QString& path) {
    if (isBusy())
        return;
    form().findChild<Field*>(QStringLiteral("path"))->setText(path);
    forgetFile();
    submit();
}

void OrdersFileSlip::dragEnterEvent(QDragEnterEvent* event) {
    if (!droppedFile(event->mimeData()).isEmpty())
        event->acceptProposedAction();
}

void OrdersFileSlip::dropEvent(QDropEvent* event) {
    const QString path = droppedFile(event->mimeData());
    if (path.isEmpty())
        return;
    event->acceptProposedAction();
    setPath(path);
}

void OrdersFileSlip::act() {
    if (isBusy())
        return;
    form().clearErrors();
    if (!m_head)
        readFile();
    else if (!m_read)
        readOrders();
    else
        takeOrders();
}

void OrdersFileSlip::readFile() {
    const QString path = form().text("path");
    if (path.isEmpty())
        return form().setError("path", tr("Say which file: its whole path."));
    m_path = std::filesystem::path(path.toStdString());
    showWork(tr("Reading the file"), 0);
    m_opening.begin([path = m_path](auto&) { return orderFileText(path); },
                    [this](const Result<std::string>& text) { showHead(text); });
}

void OrdersFileSlip::showHead(const Result<std::string>& text) {
    endWork();
    auto head =
        text.ok()
            ? desk().file().read([&](db::Connection& connection) { return orderFileHead(connection, *text); })
            : Result<OrdersHead>{text.error()};
    if (!head.ok()) {
        say(head.error());
        form().focusFirstError();
        return;
    }
    m_head = std::move(head).value();
    showColumns();
}

void OrdersFileSlip::showColumns() {
    QVector<PickItem> headings{{tr("not in the file")}};
    for (std::size_t at = 0; at < m_head->headings.size(); ++at)
        headings.append({headingWords(m_head->headings[at], m_head->first[at])});
    for (const OrderColumn column : kOrderColumns) {
        const auto named = m_head->naming.columns.find(column);
        const auto at = named == m_head->naming.columns.end()
                            ? m_head->headings.end()
                            : std::ranges::find(m_head->headings, named->second);
        const auto place = at == m_head->headings.end() ? 0 : at - m_head->headings.begin() + 1;
        auto* list = form().findChild<PickList*>(QString::fromStdString(partOf(column)));
        list->setItems(headings, static_cast<int>(place));
        form().setShown(partOf(column), true);
    }
    form().setShown("shop", true);
    form().findChild<Field*>(QStringLiteral("shop"))->setText(QString::fromStdString(m_head->naming.shop));
    setAction(tr("Show the orders"));
    if (m_head->isKnown)
        readOrders();
    else
        form().focusOn("shop");
}

bool OrdersFileSlip::nameColumns(OrderFileNaming& naming) {
    naming.shop = form().text("shop").toStdString();
    naming.headings = m_head->headings;
    naming.columns.clear();
    for (const OrderColumn column : kOrderColumns)
        if (const int chosen = form().chosen(partOf(column)); chosen > 0)
            naming.columns[column] = m_head->headings[static_cast<std::size_t>(chosen - 1)];
    if (!form().isSound())
        return false;
    const auto sound = checkNaming(naming);
    if (!sound.ok())
        say(sound.error());
    return sound.ok();
}

// Each item of the file has a line, with the label of the garment that it is like.
bool OrdersFileSlip::nameItems(OrderFileNaming& naming) {
    const auto items = db::itemsOfOrders(m_head->text, naming.columns.at(OrderColumn::Item));
    if (!items.ok() || items->size() > kMostFileItems) {
        say(items.ok() ? plainError(said("The file has more than {most} different items.",
                                         {{"most", kMostFileItems}}))
                       : items.error());
        return false;
    }
    if (*items != m_items) {
        for (std::size_t at = 0; at < m_items.size(); ++at)
            form().setShown(itemPart(at), false);
        for (std::size_t at = 0; at < items->size(); ++at)
            showItem(at, (*items)[at]);
        m_items = *items;
    }
    naming.items.clear();
    for (std::size_t at = 0; at < m_items.size(); ++at) {
        const std::string label = form().text(itemPart(at)).toStdString();
        const auto garment = desk().file().read(
            [&](db::Connection& connection) { return db::garmentLabelled(connection, label); });
        if (garment.ok() && *garment)
            naming.items[m_items[at]] = **garment;
        else
            form().setError(itemPart(at), label.empty()
                                              ? tr("Write the label of a garment like it, as 421-a.")
                                              : tr("There is no garment with this label."));
    }
    if (form().isSound())
        return true;
    form().focusFirstError();
    return false;
}

void OrdersFileSlip::showItem(std::size_t at, const std::string& item) {
    const std::string part = itemPart(at);
    auto* field = form().findChild<Field*>(QString::fromStdString(part));
    if (!field)
        field = form().line(part, {});
    form().setLabel(part, tr("“%1” is like garment").arg(breakable(QString::fromStdString(item))));
    form().setShown(part, true);
    const auto known = m_head->naming.items.find(item);
    const auto label = desk().file().read([&](db::Connection& connection) {
        return known == m_head->naming.items.end() ? std::string{} : db::labelOf(connection, known->second);
    });
    field->setText(label.ok() ? words(*label) : QString());
}

void OrdersFileSlip::readOrders() {
    OrderFileNaming naming;
    if (!nameColumns(naming) || !nameItems(naming))
        return;
    showWork(tr("Reading the orders"), 0);
    m_reading.begin(
        [&window = desk().file(), known = desk().known(), shop = desk().shop(), text = m_head->text,
         naming](auto& reporter) -> Result<OrderFileRead> {
            const auto beside = ShopBeside::open(window, known);
            if (!beside.ok())
                return beside.error();
            return (*beside)->file().read([&](db::Connection& connection) {
                return db::readOrders(connection, text, naming, *shop, lettered,
                                      [&](double share) { return reporter.report(share); });
            });
        },
        [this](Result<OrderFileRead> read) { showOrders(std::move(read)); },
        [this](double share) { showWork(tr("Reading the orders"), share); });
}

void OrdersFileSlip::showOrders(Result<OrderFileRead> read) {
    endWork();
    if (!read.ok()) {
        say(read.error());
        form().focusFirstError();
        return;
    }
    m_orders->setOptions(orderOptions(*read));
    m_orders->show();
    m_found->set(read->wrongLines() > 0 ? Tone::Held : Tone::Ready, foundWords(*read), knownWords(*read));
    m_found->show();
    if (read->wrongLines() > 0 || read->orders.empty())
        return;
    setAction(tr("Take %n order|Take %n orders", nullptr, howMany(read->orders.size())));
    m_read = std::move(read).value();
    action()->setFocus(Qt::OtherFocusReason);
}

void OrdersFileSlip::forgetFile() {
    m_head.reset();
    form().setShown("shop", false);
    for (const OrderColumn column : kOrderColumns)
        form().setShown(partOf(column), false);
    for (std::size_t at = 0; at < m_items.size(); ++at)
        form().setShown(itemPart(at), false);
    m_items.clear();
    forgetOrders();
}

void OrdersFileSlip::forgetOrders() {
    m_read.reset();
    m_found->hide();
    m_orders->hide();
    setAction(m_head ? tr("Show the orders") : tr("Read the file"));
}

void OrdersFileSlip::takeOrders() {
    showWork(tr("Taking the orders"), 0);
    m_wait = std::make_unique<QuietWait>(m_stop);
    connect(m_wait.get(), &QuietWait::stopAsked, this, [this] { m_taking.stop(); });
    m_taking.begin(
        [&window = desk().file(), known = desk().known(), path = m_path, text = m_head->text,
         read = *m_read](auto& reporter) {
            return takeOrdersBeside(window, known, path, text, read,
                                    [&](double share) { return reporter.report(share); });
        },
        [this](OrdersTaken taken) { endTaking(std::move(taken)); },
        [this](double share) { showWork(tr("Taking the orders"), share); });
}

void OrdersFileSlip::endTaking(OrdersTaken taken) {
    m_wait.reset();
    endWork();
    if (taken.outcome.ok())
        desk().takeOver(std::move(taken.written));
    else if (taken.outcome.error().field == "path")
        forgetFile(); // it is another file now
    else
        forgetOrders();
    settle(taken.outcome);
}

void OrdersFileSlip::showWork(const QString& words, double share) {
    m_progress->set(static_cast<int>(share * kWholeBar), kWholeBar, words);
    m_progress->show();
    m_stop->show();
    action()->setCannot(words);
}

void OrdersFileSlip::endWork() {
    m_progress->hide();
    m_stop->hide();
    action()->setCannot({});
}

Slip* makeOrdersFile(ShopDesk& desk, const SlipTarget&, QWidget* parent) {
    return new OrdersFileSlip(desk, parent);
}

} // namespace holdfast::app

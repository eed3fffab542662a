// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Takes the orders of a web shop's file: its columns and items are named once, each order is shown as it
// would be taken, and all are taken in one action. Nothing is taken while a line is wrong.

#include "app/desk/beside.h"
#include "app/slips/form_slip.h"
#include "app/slips/orders_file.h"

#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace holdfast::app {

class Banner;
class Button;
class Label;
class OptionList;
class ProgressBeads;
class QuietWait;

class OrdersFileSlip : public FormSlip {
    Q_OBJECT

public:
    OrdersFileSlip(ShopDesk& desk, QWidget* parent);
    ~OrdersFileSlip() override;

    bool isBusy() const;

protected:
    void act() override;
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dropEvent(QDropEvent* event) override;

private:
    void addFileParts();
    void addColumnParts();
    void choosePath();
    void setPath(const QString& path);
    void readFile();
    void showHead(const Result<std::string>& text);
    void showColumns();
    bool nameColumns(OrderFileNaming& naming);
    bool nameItems(OrderFileNaming& naming);
    void showItem(std::size_t at, const std::string& item);
    void readOrders();
    void showOrders(Result<OrderFileRead> read);
    void forgetFile();
    void forgetOrders();
    void takeOrders();
    void endTaking(OrdersTaken taken);
    void showWork(const QString& words, double share);
    void endWork();

    Banner* m_found = nullptr;
    OptionList* m_orders = nullptr;
    ProgressBeads* m_progress = nullptr;
    Button* m_stop = nullptr;
    std::unique_ptr<QuietWait> m_wait; // while the orders are written
    std::filesystem::path m_path;      // of the file that was read
    std::optional<OrdersHead> m_head;
    std::optional<OrderFileRead> m_read; // without a wrong line
    std::vector<std::string> m_items;    // that have a part of the form, in turn
    Beside<Result<std::string>> m_opening;
    Beside<Result<OrderFileRead>> m_reading;
    Beside<OrdersTaken> m_taking;
};

} // namespace holdfast::app

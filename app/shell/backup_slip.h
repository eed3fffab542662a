#pragma once
// Where the copy of the shop goes. Its action begins the copying; the foot line shows how far it is.

#include "app/slips/slip.h"

#include <filesystem>

namespace holdfast::app {

class Field;

class BackupSlip : public Slip {
    Q_OBJECT

public:
    BackupSlip(ShopDesk& desk, QWidget* parent = nullptr);

    QString title() const override;
    void begin() override;

signals:
    void backupAsked(const std::filesystem::path& target);

private:
    void choosePath();
    void start();

    ShopDesk& m_desk;
    Field* m_path = nullptr;
};

} // namespace holdfast::app

// Clashes of the plan in words, each with what to change and the record to change.
#pragma once

#include "models/domain/plan/clashes.h"

#include <QWidget>

class QVBoxLayout;

namespace rickyard::views {

class ClashList : public QWidget
{
    Q_OBJECT

public:
    explicit ClashList(QWidget *parent = nullptr);
    void setClashes(const QVector<domain::Clash> &clashes);

Q_SIGNALS:
    void opened(const rickyard::domain::Link &link);

private:
    void addLine(const domain::Clash &clash);

    QVBoxLayout *m_column;
};

} // namespace rickyard::views

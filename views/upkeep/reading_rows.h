// The values a task asks to be read, with their limits beside them: judged as they are typed, kept
// as soon as a field is left.
#pragma once

#include "views/page.h"

class QGridLayout;

namespace rickyard::views {

class StatusPill;
class TextLabel;
class UnitLineEdit;

class ReadingRows : public QWidget
{
    Q_OBJECT

public:
    explicit ReadingRows(PageContext &context, QWidget *parent = nullptr);
    void showVisit(domain::RecordId visit);
    // Writes what was typed and not kept yet; false when it cannot be read as a number.
    bool settle();
    [[nodiscard]] int count() const { return static_cast<int>(m_rows.size()); }
    [[nodiscard]] UnitLineEdit *field(int point) const { return m_rows.value(point - 1).field; }
    [[nodiscard]] StatusPill *verdict(int point) const { return m_rows.value(point - 1).verdict; }
    // The finding that values outside their limits call for; empty when none is.
    [[nodiscard]] QString failure() const;

Q_SIGNALS:
    void judged();

private:
    struct Line {
        UnitLineEdit *field = nullptr;
        StatusPill *verdict = nullptr;
    };
    void build(const domain::UpkeepTask &task);
    void judge(int point);
    bool keep(int point);

    PageContext &m_context;
    domain::RecordId m_visit = 0;
    domain::RecordId m_task = 0;
    QGridLayout *m_grid;
    TextLabel *m_limits;
    QVector<Line> m_rows;
};

} // namespace rickyard::views

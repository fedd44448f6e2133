// A moisture reading taken with the meter in one hand: a number, Enter, the next piece. Mean and
// spread stand beside it on both bases as the pieces come in. Two weighings of a piece are the
// other way to know its moisture.
#pragma once

#include "models/domain/records/books.h"
#include "views/page.h"

class QPushButton;

namespace rickyard::views {

class InlineQuestion;
class MeterFields;
class SectionTabs;
class UnitLineEdit;
class WeighingEntry;

class ReadingEntry : public QWidget
{
    Q_OBJECT

public:
    explicit ReadingEntry(PageContext &context, QWidget *parent = nullptr);

    void start(domain::RecordId lot);
    [[nodiscard]] domain::MeterBasis basis() const;
    // As the meter showed them, in per cent.
    [[nodiscard]] const QVector<double> &shown() const;
    [[nodiscard]] domain::PieceMoistures pieces() const; // dry basis
    [[nodiscard]] UnitLineEdit *field() const;
    [[nodiscard]] QString summary() const;
    [[nodiscard]] MeterFields &meter() const { return *m_meter; }
    [[nodiscard]] WeighingEntry &weighings() const { return *m_weighings; }
    [[nodiscard]] InlineQuestion &question() const { return *m_question; }
    [[nodiscard]] SectionTabs &ways() const { return *m_ways; }

Q_SIGNALS:
    void saved(qint64 id);
    void closed();

private:
    QWidget *buildMeter();
    void save();
    void write(const domain::MoistureReading &reading);

    PageContext &m_context;
    SectionTabs *m_ways = nullptr;
    MeterFields *m_meter = nullptr;
    WeighingEntry *m_weighings = nullptr;
    InlineQuestion *m_question = nullptr;
    QPushButton *m_save = nullptr;
};

} // namespace rickyard::views

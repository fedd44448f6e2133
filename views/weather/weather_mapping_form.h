// How a file's columns become weather: every part of a mapping, in sight and changeable.
#pragma once

#include "views/records/mapping_form.h"

class QCheckBox;
class QGridLayout;
class QVBoxLayout;

namespace rickyard::views {

class FieldRow;

class WeatherMappingForm : public MappingForm
{
    Q_OBJECT

public:
    explicit WeatherMappingForm(QWidget *parent = nullptr);

    // The headers that columns are chosen from.
    void setHeader(const QStringList &header);
    void setMapping(const exchange::WeatherMapping &mapping);
    [[nodiscard]] exchange::WeatherMapping mapping() const;

    [[nodiscard]] QComboBox *columnBox(const QString &quantity) const;
    [[nodiscard]] QComboBox *unitBox(const QString &quantity) const;
    [[nodiscard]] QLineEdit *placeField() const { return m_place; }

private:
    struct Line {
        QComboBox *column = nullptr;
        QComboBox *unit = nullptr;
        FieldRow *row = nullptr;
    };
    void buildTime(QVBoxLayout *column);
    void buildQuantities(QVBoxLayout *column);
    void buildRecords(QVBoxLayout *column);
    QComboBox *columnChoice(const QString &name);
    void fillAll();
    void showTimeWay();

    exchange::WeatherMapping m_mapping; // parts that are not shown are kept
    QStringList m_header;
    QVector<QComboBox *> m_columnBoxes;
    QHash<QString, Line> m_quantities;
    QComboBox *m_timeWay = nullptr;
    QComboBox *m_time = nullptr;
    QLineEdit *m_timeFormat = nullptr;
    QVector<QComboBox *> m_parts; // year, month, day, hour, minute
    QWidget *m_oneTime = nullptr;
    QWidget *m_partTimes = nullptr;
    QLineEdit *m_place = nullptr;
    QComboBox *m_placeColumn = nullptr;
    QCheckBox *m_normals = nullptr;
    QComboBox *m_outOfRange = nullptr;
};

} // namespace rickyard::views

namespace GreenLedger.Domain.Offers.Reading.Words;

/// <summary>Spanish trade words of offer lists, from common use.</summary>
internal static class Spanish
{
    public static ListWords Words { get; } = ListWords.Of("es", """
        Ref: ref, referencia, lote, lote no, no lote, número de lote, código, codigo, partida, n
        Name: nombre, nombre del lote, café, descripción, calidad, producto
        Producer: productor, productora, finca, finca productor, nombre de la finca, hacienda, caficultor, estación, beneficio húmedo, cooperativa, asociación
        Country: país, origen, país de origen
        Region: región, municipio, departamento, zona, provincia, vereda, ubicación, municipio departamento, localidad
        Varieties: variedad, variedades, varietal
        Process: proceso, beneficio, beneficio process, método, procesamiento, tipo de proceso
        CropYear: cosecha, año de cosecha, año cosecha, zafra
        Grade: grado, clase, preparación, tipo
        Screen: malla, zaranda, criba, tamaño
        Altitude: altura, altitud, msnm, elevación
        StatedScore: puntaje, puntaje taza, puntuación, puntos, taza, puntaje sca, perfil de taza puntaje
        Bags: sacos, bolsas, no sacos, número de sacos, cantidad de sacos, cantidad sacos, bultos
        BagWeight: kg saco, kg por saco, kilos por saco, peso por saco, peso saco, peso del saco, kg bolsa, kg bulto, lb saco
        Packaging: empaque, embalaje, envase, presentación
        Quantity: cantidad, volumen, cant
        NetWeight: peso neto, kg netos, kilos netos, peso, kilos, peso kg, total kg, libras
        Price: precio, precio fob, precio unitario, valor
        Differential: diferencial, dif
        FuturesMonth: mes de futuros, posición, mes
        Currency: moneda, divisa
        PriceUnit: unidad, unidad de precio
        Incoterm: condición de entrega, término, términos de entrega
        Place: puerto, lugar, puerto de embarque, lugar de entrega
        ValidUntil: válido hasta, vigencia, validez, vigente hasta, vence
        Availability: disponible, disponibilidad, estado, embarque
        Certificates: certificación, certificaciones, certificado, certificados, sellos
        IcoMark: marca ico, marca oic, oic
        Moisture: humedad
        Notes: notas, nota, observaciones, observación, comentarios, notas de taza, perfil, perfil de taza
        LeastBags: pedido mínimo, mínimo, lote mínimo, cantidad mínima, compra mínima, mínimo sacos, sacos mínimo, sacos mínimos
        warehouse: no almacén, número de almacén
        spot: en almacén, ex almacén, en bodega, ex bodega
        sold: vendido, vendida, agotado, no disponible
        withdrawn: retirado, retirada, cancelado, no
        available: si, sí, disponible, libre
        valid: válido hasta, válida hasta, válidos hasta, vigente hasta, vigencia, validez, vence
        crop: cosecha, zafra
        total: total, totales, suma, subtotal
        bigbag: big bag, súper saco, granel, a granel
        bag: saco, sacos, bolsa, bolsas, caja, cajas, bulto, bultos
        cooperative: cooperativa, coop, asociación, asoc, asociados
        station: estación, beneficio húmedo
        farm: finca, hacienda, fincas
        outright: precio
        January: enero, ene
        February: febrero, feb
        March: marzo, mar
        April: abril, abr
        May: mayo, may
        June: junio, jun
        July: julio, jul
        August: agosto, ago
        September: septiembre, setiembre, sept, sep, set
        October: octubre, oct
        November: noviembre, nov
        December: diciembre, dic
        """);
}
